/** A proved plan (or a draft) to the bytes of a file. */
import type { Words } from '../base/words.ts';
import { loadFonts } from '../files.ts';
import type { Assets } from '../model/assets.ts';
import { type Sheet, sheet } from '../phases/sheet.ts';
import { attachedTo } from '../record/attached.ts';
import type { Format } from './commands.ts';
import { packed } from './packed.ts';
import type { Planned } from './tools.ts';

export async function print(planned: Planned, format: Format, assets: Assets, words: Words): Promise<Uint8Array | string> {
  if (format === 'json') return (await import('../render/json.ts')).writeJson(planned.plan);
  const { view, document } = pagesOf(planned, assets, words);
  if (format === 'text') return (await import('../render/text.ts')).writeText(view, document);
  const attached = planned.inputs ? attachedTo(planned.plan, planned.inputs, assets.workshop, words) : [];
  return (await import('../render/pdf.ts')).writePdf({ ...document, attached }, loadFonts(), packed);
}

function pagesOf({ plan, stages = [], edition = 'bench', wish }: Planned, assets: Assets, words: Words): Sheet {
  return sheet(plan, stages, { words, advances: assets.advances, language: assets.language, edition, ...wish });
}
