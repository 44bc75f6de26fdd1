/**
 * The library's face. Nothing here reads a disk, a clock or a locale, so it runs in a browser too; `valvewright/files` loads the package's
 * own words, fonts and workshop where there is a disk.
 */

export type { Diagnostic, Outcome, Place } from './base/diagnostics.ts';
export { report } from './base/report.ts';
export { type Words, words } from './base/words.ts';
export { type Compiled, compile } from './compile.ts';
export type { Assets, FontFiles, Input, Inputs } from './model/assets.ts';
export type { Attached, Document, Page, Picture } from './model/display.ts';
export type * from './model/ids.ts';
export type * from './model/part.ts';
export type * from './model/plan.ts';
export type { SheetView } from './model/sheet.ts';
export type { WhyView } from './model/why.ts';
export type { Workshop } from './model/workshop.ts';
export { type Sheet, type SheetMeans, type StageAt, sheet } from './phases/sheet.ts';
export { why } from './phases/why.ts';
export { attachedTo } from './record/attached.ts';
export { writePdf } from './render/pdf.ts';
