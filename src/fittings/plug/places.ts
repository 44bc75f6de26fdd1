/** Which key of the file a finding of the design is about, the likeliest first. */

export const PLUG_PLACES: Readonly<Record<string, readonly string[]>> = {
  'design.material-unknown': ['material'],
  'design.no-bar': ['material', 'thread'],
  'design.pipe-wall': ['pipe.wall', 'pipe'],
  'design.pipe-needed': ['closes'],
  'design.pump-thread-needed': ['closes'],
  'design.pump-over-tail': ['pump'],
  'design.adaptor-thin': ['bore', 'pump'],
  'design.thread-unknown': ['{which}', 'thread'],
  'design.nut-has-no-floor': ['thread', 'pipe'],
  'design.plug-shallow': ['screwed', 'thread'],
};
