/** A short mark for a text: FNV-1a, 32 bits, as 8 hex digits. For telling sheets apart at the bench; no protection against intent. */
export function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash.toString(16).padStart(8, '0');
}
