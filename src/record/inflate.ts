/** Unpacks what was packed with zlib, by what browsers and Node both bring. */

/** More than any sheet's plan: a small file may claim to hold a very large one. */
const MOST_BYTES = 64 * 1024 * 1024;

/** Undefined for what is broken, and for more than 64 MB. */
export async function inflate(packed: Uint8Array): Promise<Uint8Array | undefined> {
  try {
    const stream = new Blob([packed.slice()]).stream().pipeThrough(new DecompressionStream('deflate'));
    const reader = (stream as unknown as ReadableStream<Uint8Array>).getReader();
    const chunks: Uint8Array[] = [];
    let size = 0;
    for (let read = await reader.read(); !read.done; read = await reader.read()) {
      size += read.value.length;
      if (size > MOST_BYTES) return undefined;
      chunks.push(read.value);
    }
    return together(chunks, size);
  } catch {
    return undefined;
  }
}

function together(chunks: readonly Uint8Array[], size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
