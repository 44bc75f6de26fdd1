/**
 * Every sentence that a reader sees: blocks in templates/<language>/*.hbs, one inline block per id:
 *   {{#*inline "rule.seat-face-after-drill.why"}}The drill's mouth is bell-shaped.{{/inline}}
 * Records handed to a block are plain and frozen; a field that is not there is an error, also as a helper's argument.
 */
import Handlebars from 'handlebars';
import { blocksIn, hasFields, READING, stretchesOf } from './blocks.ts';
import { filled } from './plain-words.ts';
import { len, showMm } from './units.ts';

export type Grounds = Readonly<Record<string, unknown>>;
export type Words = {
  /** Throws Error when the id or a field is missing: our fault, not the user's. */
  say(id: string, grounds?: Grounds): string;
  has(id: string): boolean;
  /** The same words, lengths in them written so. */
  written(lengths: Lengths): Words;
  /** In the order of their code units. */
  ids(): readonly string[];
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

/** Blocks that the engine has read beforehand: a block's text to what `Handlebars.precompile` made of it, read as `READING` says. */
export type Ready = ReadonlyMap<string, () => object>;
type Engine = { readonly own: typeof Handlebars; readonly ready: Ready };
/** A block as it is said. */
type Block = (grounds: Grounds, id: string, lengths: Lengths) => string;
/** By id: as it was read, and once it has been said, as it is said. */
type Blocks = Map<string, string | Block>;

/**
 * `files`: template file name to its text; what is not among the `ready` ones with that very text is read when it is first said. Throws Error
 * on a block that stands twice or on text outside any block.
 */
export function words(files: Readonly<Record<string, string>>, ready: Ready = new Map()): Words {
  const blocks: Blocks = new Map();
  const own = Handlebars.create();
  registerHelpers(own);
  for (const name of Object.keys(files).sort()) readBlocks(name, files[name] ?? '', blocks);
  return saying(blocks, { own, ready }, METRIC);
}

function saying(blocks: Blocks, engine: Engine, lengths: Lengths): Words {
  return {
    ids: () => [...blocks.keys()].sort(),
    has: (id) => blocks.has(id),
    written: (others) => saying(blocks, engine, others),
    say(id, grounds = {}) {
      const read = blocks.get(id);
      if (read === undefined) throw new Error(`no words for '${id}'`);
      try {
        const block = typeof read === 'string' ? blockOf(engine, read) : read;
        blocks.set(id, block);
        return block(grounds, id, lengths);
      } catch (cause) {
        throw new Error(`words '${id}': ${cause instanceof Error ? cause.message : String(cause)}`, { cause });
      }
    },
  };
}

/** Parsed when they are first said: a run says few of them. (A test parses every file in whole.) */
function readBlocks(name: string, text: string, into: Blocks): void {
  for (const [id, body] of blocksIn(name, text)) {
    if (into.has(id)) throw new Error(`${name}: '${id}' stands twice`);
    into.set(id, body);
  }
}

/** What has no fields is its own text, what has nothing else is filled in; the engine is for the others. */
function blockOf({ own, ready }: Engine, body: string): Block {
  if (!hasFields(body)) {
    const text = folded(body);
    return () => text;
  }
  const stretches = stretchesOf(body);
  if (stretches) return (grounds, id) => folded(filled(stretches, (name) => String(fieldOf(grounds, name, id))));
  const before = ready.get(body);
  const block = before ? own.template(before()) : own.compile(body, READING as never);
  return (grounds, id, lengths) => folded(block(guarded(grounds, id), { data: { lengths } }));
}

const folded = (text: string): string => text.replace(/\s+/g, ' ').trim();

function fieldOf(grounds: Grounds, name: string, id: string): unknown {
  if (!Object.hasOwn(grounds, name)) throw new Error(`'${id}' asks for '${name}', which it was not given`);
  const value = grounds[name];
  if (value === undefined || value === null || Number.isNaN(value)) throw new Error(`'${id}': '${name}' has no value`);
  return value;
}

/** Handlebars lets `{{#if a}}` and helper arguments slip; this record does not. */
function guarded(grounds: Grounds, id: string): Grounds {
  return new Proxy(Object.freeze({ ...grounds }), {
    get: (target, key) => (typeof key === 'symbol' ? Reflect.get(target, key) : fieldOf(target, key, id)),
  });
}

function registerHelpers(engine: typeof Handlebars): void {
  /** {{plural n 'cut' 'cuts'}} */
  engine.registerHelper('plural', (n: unknown, one: string, many: string) => {
    if (typeof n !== 'number') throw new Error('plural needs a number');
    return n === 1 ? one : many;
  });
  /** {{mm a}}: a length in whole units of 0.1 um, as grounds of findings carry it; without its unit */
  engine.registerHelper('mm', (length: unknown) => {
    if (typeof length !== 'number') throw new Error('mm needs a length');
    return showMm(len(length));
  });
  /** {{rounded x 1}}: rounded to so many decimals */
  engine.registerHelper('rounded', (value: unknown, places: unknown) => {
    if (typeof value !== 'number' || typeof places !== 'number') throw new Error('rounded needs a number and its decimals');
    return value.toFixed(places);
  });
  /** {{#is a 'b'}}...{{else}}...{{/is}} */
  engine.registerHelper('is', function (this: unknown, a: unknown, b: unknown, options: Handlebars.HelperOptions) {
    return a === b ? options.fn(this) : options.inverse(this);
  });
  registerLengths(engine);
}

/**
 * Lengths in millimetres, as grounds carry them in figures or in text, as the sheet writes them: {{in-units depth}} '9.5' or '0.374',
 * {{with-unit depth}} the same with its unit, {{as-sold ball}} by the size under which it is sold; {{by-units 'mm' 'in'}} one of two.
 */
function registerLengths(engine: typeof Handlebars): void {
  const write = (how: 'bare' | 'withUnit' | 'sold') => (length: unknown, options: Handlebars.HelperOptions) => {
    if (typeof length !== 'number' && typeof length !== 'string') throw new Error('a length is a number or its text');
    const value = Number(length);
    return length === '' || Number.isNaN(value) ? length : (options.data.lengths as Lengths)[how](value, String(length));
  };
  engine.registerHelper('in-units', write('bare'));
  engine.registerHelper('with-unit', write('withUnit'));
  engine.registerHelper('as-sold', write('sold'));
  engine.registerHelper('by-units', (metric: string, inch: string, options: Handlebars.HelperOptions) =>
    (options.data.lengths as Lengths).pick(metric, inch),
  );
}
