/** A proved plan (or a draft) to the bytes of a file. */
import type { Words } from '../base/words.ts';
import { loadFonts } from '../files.ts';
import type { Assets } from '../model/assets.ts';
import type { Document } from '../model/display.ts';
import type { SheetView } from '../model/sheet.ts';
import { sheet } from '../phases/sheet.ts';
import type { Format } from './commands.ts';
import type { Planned } from './tools.ts';

const LANGUAGE = 'en';

export async function print(planned: Planned, format: Format, assets: Assets, words: Words): Promise<Uint8Array | string> {
  if (format === 'json') return `${JSON.stringify(planned.plan, null, 2)}\n`;
  if (format === 'text') {
    const { view, document } = written(planned, assets, words);
    return (await import('../render/text.ts')).writeText(view, document);
  }
  return (await import('../render/pdf.ts')).writePdf(documentOf(planned, assets, words), loadFonts());
}

/** The pages, placed; also what the bench counts. */
export function documentOf(planned: Planned, assets: Assets, words: Words): Document {
  return written(planned, assets, words).document;
}

function written({ plan, stages = [] }: Planned, assets: Assets, words: Words): { readonly view: SheetView; readonly document: Document } {
  return sheet(plan, stages, { words, advances: assets.advances, language: LANGUAGE });
}
