/** MD5 (RFC 1321): what PDF asks for as the checksum of a file inside a file. It finds accidents; it is no protection against intent. */

const BLOCK = 64;
const LENGTH_PLACE = 56;
const WORD = 4;
const SHIFTS = Int32Array.of(7, 12, 17, 22, 5, 9, 14, 20, 4, 11, 16, 23, 6, 10, 15, 21);
const STARTS = [0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476] as const;
/** floor(2^32 |sin(i + 1)|) */
const SINES = Int32Array.from({ length: BLOCK }, (_, i) => Math.floor(Math.abs(Math.sin(i + 1)) * 2 ** 32) | 0);

/** 16 bytes. */
export function md5(message: Uint8Array): Uint8Array {
  const padded = pad(message);
  const view = new DataView(padded.buffer);
  const state = Int32Array.from(STARTS);
  for (let at = 0; at < padded.length; at += BLOCK) mix(state, view, at);
  const out = new DataView(new ArrayBuffer(WORD * WORD));
  for (const [i, word] of state.entries()) out.setInt32(i * WORD, word, true);
  return new Uint8Array(out.buffer);
}

function pad(message: Uint8Array): Uint8Array {
  const blocks = Math.floor((message.length + BLOCK - LENGTH_PLACE) / BLOCK) + 1;
  const bytes = new Uint8Array(blocks * BLOCK);
  bytes.set(message);
  bytes[message.length] = 0x80;
  const view = new DataView(bytes.buffer);
  view.setUint32(bytes.length - 2 * WORD, (message.length * 8) >>> 0, true);
  view.setUint32(bytes.length - WORD, Math.floor((message.length * 8) / 2 ** 32), true);
  return bytes;
}

/**
 * The block at `at` into the state: plain sums of 32 bits, as a plan has a million bytes. All that is done to a block is done in here: what is
 * called for every block is soon optimised, what goes round for a long time within one call is not.
 */
function mix(state: Int32Array, view: DataView, at: number): void {
  let a = state[0] ?? 0;
  let b = state[1] ?? 0;
  let c = state[2] ?? 0;
  let d = state[3] ?? 0;
  for (let i = 0; i < BLOCK; i++) {
    const round = i >> 4;
    const f = round === 0 ? (b & c) | (~b & d) : round === 1 ? (d & b) | (~d & c) : round === 2 ? b ^ c ^ d : c ^ (b | ~d);
    const g = (round === 0 ? i : round === 1 ? 5 * i + 1 : round === 2 ? 3 * i + 5 : 7 * i) & 15;
    const sum = (a + f + (SINES[i] ?? 0) + view.getInt32(at + g * WORD, true)) | 0;
    const shift = SHIFTS[round * WORD + (i & 3)] ?? 0;
    a = d;
    d = c;
    c = b;
    b = (b + ((sum << shift) | (sum >>> (32 - shift)))) | 0;
  }
  state[0] = ((state[0] ?? 0) + a) | 0;
  state[1] = ((state[1] ?? 0) + b) | 0;
  state[2] = ((state[2] ?? 0) + c) | 0;
  state[3] = ((state[3] ?? 0) + d) | 0;
}
