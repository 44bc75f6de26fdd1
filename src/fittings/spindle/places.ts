/** Which key of the file a finding of the design is about, the likeliest first. */

export const SPINDLE_PLACES: Readonly<Record<string, readonly string[]>> = {
  'design.material-unknown': ['material'],
  'design.no-bar': ['rod', 'material', 'bore'],
  'design.thread-unknown': ['{which}.size', 'thread.size', 'thread'],
  'design.plug-under-seat': ['plug.across', 'bore'],
  'design.tip-over-seat': ['cone.tip', 'bore'],
  'design.plug-short': ['plug.length', 'plug'],
  'design.rod-too-thin': ['rod'],
  'design.square-over-stem': ['square.across', 'square'],
  'design.square-shallow': ['square.across', 'square'],
  'design.no-end-thread': ['stem.across', 'square.across', 'bore'],
  'design.end-thread-over-square': ['end.size', 'square.across'],
  'design.spindle-thread-under-stem': ['thread.size', 'thread', 'stem.across'],
  'design.spindle-thread-over-plug': ['thread.size', 'thread', 'plug.across', 'bore'],
};
