/** Which key of the file a finding of the design is about, the likeliest first. */

export const TOOLING_PLACES: Readonly<Record<string, readonly string[]>> = {
  'design.thread-unknown': ['thread'],
  'design.no-bar': ['diameter', 'rim', 'thread'],
  'design.mandrel-shallow': ['depth'],
  'design.gauge-nut-short': ['length'],
};
