/** A short mark for a text: FNV-1a, 32 bits, as 8 hex digits. For telling sheets apart at the bench; no protection against intent. */
export function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let from = 0; from < text.length; from += STRETCH) hash = markedOn(hash, text, from, Math.min(from + STRETCH, text.length));
  return (hash >>> 0).toString(16).padStart(8, '0');
}

/** A plan has a million letters: what is called for every stretch is optimised sooner than what goes round a million times within one call. */
const STRETCH = 1000;

function markedOn(before: number, text: string, from: number, to: number): number {
  let hash = before;
  for (let i = from; i < to; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash;
}
