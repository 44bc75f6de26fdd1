/**
 * Every sentence that a reader sees: blocks in templates/<language>/*.hbs, one inline block per id:
 *   {{#*inline "rule.seat-face-after-drill.why"}}The drill's mouth is bell-shaped.{{/inline}}
 * Records handed to a block are plain; a field that is not there is an error, also as a helper's argument.
 */
import { len, showMm } from './units.ts';
import { type Block, type Helper, readBlock, sayBlock } from './words/block.ts';

export type Grounds = Readonly<Record<string, unknown>>;
export type Words = {
  /** Throws Error when the id or a field is missing: our fault, not the user's. */
  say(id: string, grounds?: Grounds): string;
  has(id: string): boolean;
  /** The same words, lengths in them written so. */
  written(lengths: Lengths): Words;
  readonly ids: readonly string[];
};

/** How words write a length of so many millimetres. `pick`: the wording for millimetres, or the other one. */
export type Lengths = {
  bare(mm: number, text: string): string;
  withUnit(mm: number, text: string): string;
  /** As a thing is sold: its own size, whatever the sheet counts in. */
  sold(mm: number, text: string): string;
  pick(metric: string, inch: string): string;
};
const METRIC: Lengths = {
  bare: (_, text) => text,
  withUnit: (_, text) => `${text} mm`,
  sold: (_, text) => `${text} mm`,
  pick: (metric) => metric,
};

/** `files`: template file name to its text. Throws Error on a block that stands twice or on text outside any block. */
export function words(files: Readonly<Record<string, string>>): Words {
  const texts = new Map<string, string>();
  for (const name of Object.keys(files).sort()) readTexts(name, files[name] ?? '', texts);
  return saying(texts, METRIC);
}

/** Blocks are read when they are first said: a run says few of them. */
function saying(texts: ReadonlyMap<string, string>, lengths: Lengths): Words {
  const helpers = { ...HELPERS, ...lengthHelpers(lengths) };
  const blocks = new Map<string, Block>();
  const blockOf = (id: string, text: string): Block => {
    const block = blocks.get(id) ?? readBlock(text, helpers);
    blocks.set(id, block);
    return block;
  };
  return {
    ids: [...texts.keys()].sort(),
    has: (id) => texts.has(id),
    written: (others) => saying(texts, others),
    say(id, grounds = {}) {
      const text = texts.get(id);
      if (text === undefined) throw new Error(`no words for '${id}'`);
      try {
        return sayBlock(blockOf(id, text), (field) => given(grounds, field, id))
          .replace(/\s+/g, ' ')
          .trim();
      } catch (cause) {
        throw new Error(`words '${id}': ${cause instanceof Error ? cause.message : String(cause)}`, { cause });
      }
    },
  };
}

const BLOCK = /\{\{#\*inline "([^"]+)"\}\}([\s\S]*?)\{\{\/inline\}\}/g;
const COMMENT = /\{\{!--[\s\S]*?--\}\}|\{\{![^}]*\}\}/g;

/** Blocks are found by their marks; whatever stands between them has to be a comment or nothing. */
function readTexts(name: string, text: string, into: Map<string, string>): void {
  const rest = text.replace(BLOCK, (_, id: string, body: string) => {
    if (into.has(id)) throw new Error(`${name}: '${id}' stands twice`);
    into.set(id, body);
    return '';
  });
  if (rest.replace(COMMENT, '').trim() !== '') throw new Error(`${name}: only inline blocks may stand here`);
}

/** A field that is not there, or holds nothing that could be said, is an error. */
function given(grounds: Grounds, field: string, id: string): unknown {
  if (!Object.hasOwn(grounds, field)) throw new Error(`'${id}' asks for '${field}', which it was not given`);
  const value = grounds[field];
  if (value === undefined || value === null || Number.isNaN(value)) throw new Error(`'${id}': '${field}' has no value`);
  return value;
}

const HELPERS: Readonly<Record<string, Helper>> = {
  /** {{plural n 'cut' 'cuts'}} */
  plural: (n, one, many) => {
    if (typeof n !== 'number') throw new Error('plural needs a number');
    return n === 1 ? one : many;
  },
  /** {{mm a}}: a length in whole units of 0.1 um, as grounds of findings carry it; without its unit */
  mm: (length) => {
    if (typeof length !== 'number') throw new Error('mm needs a length');
    return showMm(len(length));
  },
  /** {{rounded x 1}}: rounded to so many decimals */
  rounded: (value, places) => {
    if (typeof value !== 'number' || typeof places !== 'number') throw new Error('rounded needs a number and its decimals');
    return value.toFixed(places);
  },
};

/**
 * Lengths in millimetres, as grounds carry them in figures or in text, as the sheet writes them: {{in-units depth}} '9.5' or '0.374',
 * {{with-unit depth}} the same with its unit, {{as-sold ball}} by the size under which it is sold; {{by-units 'mm' 'in'}} one of two.
 */
function lengthHelpers(lengths: Lengths): Readonly<Record<string, Helper>> {
  const write = (how: (mm: number, text: string) => string): Helper => {
    return (length) => {
      if (typeof length !== 'number' && typeof length !== 'string') throw new Error('a length is a number or its text');
      const value = Number(length);
      return length === '' || Number.isNaN(value) ? length : how(value, String(length));
    };
  };
  return {
    'in-units': write(lengths.bare),
    'with-unit': write(lengths.withUnit),
    'as-sold': write(lengths.sold),
    'by-units': (metric, inch) => lengths.pick(String(metric), String(inch)),
  };
}
