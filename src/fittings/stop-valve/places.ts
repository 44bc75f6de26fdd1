/** Which key of the file a finding of the design is about, the likeliest first. */

export const STOP_VALVE_PLACES: Readonly<Record<string, readonly string[]>> = {
  'design.pipe-wall': ['pipe.wall', 'pipe'],
  'design.material-unknown': ['material', 'spindle-material'],
  'design.no-bar': ['material', 'spindle-material'],
  'design.seat-under-pipe': ['bore', 'pipe'],
  'design.thread-unknown': ['threads'],
  'design.thread-under-chamber': ['threads.bonnet', 'threads', 'bore'],
  'design.spindle-thread-under-stem': ['threads.spindle', 'threads', 'stem'],
  'design.spindle-thread-over-plug': ['threads.spindle', 'threads', 'bore'],
  'design.no-end-thread': ['stem', 'bore'],
  'design.plug-has-no-land': ['lift', 'bore', 'cone'],
  'design.opens-little': ['lift', 'bore', 'cone'],
  'design.same-metal': ['spindle-material', 'material'],
  'design.rim-hard': ['wheel', 'bore', 'duty.pressure'],
  'design.pipe-weak': ['pipe.wall', 'pipe'],
  'design.braze-hot': ['duty.pressure'],
  'design.copper-hot': ['duty.pressure'],
  'design.loses-zinc': ['material'],
  'design.metal-unfit': ['material'],
  'design.galls': ['spindle-material', 'material'],
  'design.wall-thin': ['threads', 'packing', 'bore'],
};
