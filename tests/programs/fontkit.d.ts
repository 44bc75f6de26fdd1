/** The few calls of fontkit (which pdfkit brings) that the table of advances is read with; the package has no types of its own. */
declare module 'fontkit' {
  export type Font = {
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    hasGlyphForCodePoint(point: number): boolean;
    glyphForCodePoint(point: number): { readonly advanceWidth: number };
    layout(text: string, features?: Readonly<Record<string, boolean>>): { readonly advanceWidth: number };
  };
  export function create(bytes: Uint8Array): Font;
}
