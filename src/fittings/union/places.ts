/** Which key of the file a finding of the design is about, the likeliest first. */

export const UNION_PLACES: Readonly<Record<string, readonly string[]>> = {
  'design.material-unknown': ['material'],
  'design.no-bar': ['material', 'pipe'],
  'design.pipe-wall': ['pipe.wall', 'pipe'],
  'design.thread-unknown': ['thread', 'pipe'],
  'design.nut-has-no-floor': ['thread', 'pipe'],
  'design.spigot-thin': ['into.hole', 'bore', 'into'],
  'design.coupling-thin': ['thread', 'bore', 'pipe'],
  'design.overlap-short': ['into.wall', 'into'],
  'design.overlap-long': ['into.wall', 'into'],
};
