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
  const blocks = new Map<string, string>();
  const rest = text.replace(COMMENT, '').replace(BLOCK, (_, id: string, body: string) => {
    if (blocks.has(id)) throw new Error(`'${id}' stands twice`);
    if (body.replace(FIELD, '').includes('{{')) throw new Error(`'${id}' is more than plain words`);
    blocks.set(id, body.replace(/\s+/g, ' ').trim());
    return '';
  });
  if (rest.trim() !== '') throw new Error('only inline blocks may stand here');
  return {
    ids: [...blocks.keys()].sort(),
    has: (id) => blocks.has(id),
    say(id, grounds = {}) {
      const block = blocks.get(id);
      if (block === undefined) throw new Error(`no words for '${id}'`);
      return block.replace(FIELD, (_, name: string) => {
        const value = Object.hasOwn(grounds, name) ? grounds[name] : undefined;
        if (value === undefined) throw new Error(`'${id}' asks for '${name}', which it was not given`);
        return value;
      });
    },
  };
}
const COMMENT = /\{\{!--[\s\S]*?--\}\}/g;
const BLOCK = /\{\{#\*inline "([^"]+)"\}\}([\s\S]*?)\{\{\/inline\}\}/g;
const FIELD = /\{\{([a-z]+)\}\}/g;
