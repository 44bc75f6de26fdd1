/**
 * Words of a template file that holds nothing but blocks with `{{field}}` in them: read without the template engine, whose loading would take
 * longer than a look-up. The same file is read by the engine with all others, so its blocks are tested there too.
 */
export type PlainWords = {
  say(id: string, grounds?: Readonly<Record<string, string>>): string;
  has(id: string): boolean;
  readonly ids: readonly string[];
};

/** Throws Error on a block that stands twice, on text outside any, and on anything in a block that is more than a field. */
export function plainWords(text: string): PlainWords {
  const blocks = new Map<string, Stretches>();
  const rest = text.replace(COMMENT, '').replace(BLOCK, (_, id: string, body: string) => {
    if (blocks.has(id)) throw new Error(`'${id}' stands twice`);
    const stretches = plainStretches(body.replace(/\s+/g, ' ').trim());
    if (!stretches) throw new Error(`'${id}' is more than plain words`);
    blocks.set(id, stretches);
    return '';
  });
  if (rest.trim() !== '') throw new Error('only inline blocks may stand here');
  return {
    ids: [...blocks.keys()].sort(),
    has: (id) => blocks.has(id),
    say(id, grounds = {}) {
      const block = blocks.get(id);
      if (block === undefined) throw new Error(`no words for '${id}'`);
      return filled(block, (name) => {
        const value = Object.hasOwn(grounds, name) ? grounds[name] : undefined;
        if (value === undefined) throw new Error(`'${id}' asks for '${name}', which it was not given`);
        return value;
      });
    },
  };
}
const COMMENT = /\{\{!--[\s\S]*?--\}\}/g;
/** A block, by its marks: id and text. */
export const BLOCK = /\{\{#\*inline "([^"]+)"\}\}([\s\S]*?)\{\{\/inline\}\}/g;

/** Texts, and between each and the next the name of a field. */
export type Stretches = { readonly texts: readonly string[]; readonly names: readonly string[] };

/** Undefined for a block in which stands anything but words and fields. */
export function plainStretches(body: string): Stretches | undefined {
  const pieces = body.split(FIELD);
  const texts = pieces.filter((_, i) => i % 2 === 0);
  return texts.some((text) => MORE.test(text)) ? undefined : { texts, names: pieces.filter((_, i) => i % 2 === 1) };
}
const FIELD = /\{\{([A-Za-z]+)\}\}/;
/** Of a third brace, or a sign before braces that takes their meaning, the engine knows. */
const MORE = /\{\{|\{$|\\/;

export function filled({ texts, names }: Stretches, value: (name: string) => string): string {
  return names.reduce((said, name, i) => `${said}${value(name)}${texts[i + 1] ?? ''}`, texts[0] ?? '');
}
