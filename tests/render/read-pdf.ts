/** Reads a PDF back with a reader that shares nothing with the writer: texts with their places in millimetres, y downward. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type ReadText = { readonly text: string; readonly x: number; readonly y: number; readonly width: number; readonly size: number };
export type ReadPdf = {
  readonly pages: readonly { readonly width: number; readonly height: number; readonly texts: readonly ReadText[] }[];
  readonly labels: readonly string[] | null;
  readonly outline: readonly string[];
  readonly info: Readonly<Record<string, unknown>>;
  readonly xmpTitle: string | undefined;
};

const MM = 25.4 / 72;

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  // the reader takes the bytes for itself
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const file = await task.promise;
  const numbers = Array.from({ length: file.numPages }, (_, i) => i + 1);
  const pages = await Promise.all(
    numbers.map(async (n) => {
      const page = await file.getPage(n);
      const { width, height } = page.getViewport({ scale: 1 });
      const { items } = await page.getTextContent();
      const texts = items.flatMap((item) => {
        if (!('str' in item) || item.str.trim() === '') return [];
        const [a = 0, b = 0, , , x = 0, y = 0] = item.transform as readonly number[];
        return [{ text: item.str, x: x * MM, y: (height - y) * MM, width: item.width * MM, size: Math.hypot(a, b) * MM }];
      });
      return { width: width * MM, height: height * MM, texts };
    }),
  );
  const { info, metadata } = await file.getMetadata();
  const read: ReadPdf = {
    pages,
    labels: await file.getPageLabels(),
    outline: ((await file.getOutline()) ?? []).map((entry) => entry.title),
    info: info as Readonly<Record<string, unknown>>,
    xmpTitle: metadata?.get('dc:title') as string | undefined,
  };
  await task.destroy();
  return read;
}

/** All that stands on a page, blanks as they come. */
export function textOf(page: ReadPdf['pages'][number]): string {
  return page.texts.map((t) => t.text).join(' ');
}
