/** Which key of the file a finding of the design is about, the likeliest first. */

export const CHECK_VALVE_PLACES: Readonly<Record<string, readonly string[]>> = {
  'design.pipe-wall': ['pipe.wall', 'pipe'],
  'design.pressure': ['duty.pressure'],
  'design.material-unknown': ['material'],
  'design.no-bar': ['material'],
  'design.ball-crowds-seat': ['bore', 'ball'],
  'design.bore-too-small': ['bore', 'ball'],
  'design.bore-unusual': ['bore', 'ball'],
  'design.lift': ['lift', 'duty.pump', 'ball'],
  'design.chamber-chokes': ['ball', 'bore'],
  'design.outlet-draws-ball': ['ball', 'lift'],
  'design.stem-chokes': ['ball', 'bore'],
  'design.stem-lost': ['ball', 'lift'],
  'design.thread-unknown': ['threads'],
  'design.thread-under-chamber': ['threads.seat', 'threads', 'ball'],
  'design.wall-thin': ['threads', 'ball'],
};
