/** What may be asked on the command line, as data: parsing, help and tests all read this one list. Its words are `cli.*` in templates. */

import { WISHES } from '../model/wish.ts';

export type Taking = {
  readonly name: string;
  readonly takes: 'file' | 'folder' | 'one' | 'count' | 'size' | 'picture';
  readonly any?: readonly string[];
  /** The option without which it says nothing. */
  readonly beside?: string;
};
export type Tongue = { readonly name: string; readonly takes: 'language' };
export type Switch = { readonly name: string; readonly takes: 'nothing' };
/** What 'language' takes is settled by what languages there are. */
export type Option = Taking | Tongue | Switch;
export type Command = {
  readonly name: 'sheet' | 'check' | 'why' | 'size' | 'look' | 'exercise' | 'mark' | 'new' | 'reopen';
  /** In order; those from `least` on may be left out. */
  readonly wants: readonly string[];
  readonly least: number;
  /** The last of `wants` may be several words: `look speed silver steel 6 mm`. */
  readonly open?: true;
  /** It judges its first word before it misses the others. */
  readonly judges?: true;
  readonly options: readonly Option[];
};

export const FORMATS = ['pdf', 'text', 'json'] as const;
export type Format = (typeof FORMATS)[number];

/** For whom a sheet is. */
export const EDITIONS = ['bench', 'learner'] as const;

/** What a tool is made of, as it is written on the command line. */
export const TOOLS = ['hss', 'carbide'] as const;

const WORKSHOP: Option = { name: 'workshop', takes: 'file' };
const QUANTITY: Option = { name: 'quantity', takes: 'count' };
/** How the sheet looks: as the workshop has it, where nothing is said. */
const ON_PAPER: readonly Option[] = [
  { name: 'paper', takes: 'one', any: WISHES.paper },
  { name: 'type', takes: 'one', any: WISHES.type },
];
const LOOKS: readonly Option[] = [{ name: 'units', takes: 'one', any: WISHES.units }, ...ON_PAPER];
const JSON_OUT: Option = { name: 'json', takes: 'nothing' };
const GRAPH: Option = { name: 'graph', takes: 'nothing' };
const PART: Option = { name: 'part', takes: 'one' };
const LANGUAGE: Option = { name: 'language', takes: 'language' };
const HELP: Option = { name: 'help', takes: 'nothing' };

export const COMMANDS: readonly Command[] = [
  {
    name: 'sheet',
    wants: ['fittings'],
    least: 1,
    open: true,
    options: [
      WORKSHOP,
      QUANTITY,
      { name: 'out', takes: 'folder' },
      { name: 'format', takes: 'one', any: FORMATS },
      ...LOOKS,
      { name: 'edition', takes: 'one', any: EDITIONS },
      { name: 'draft', takes: 'nothing' },
      JSON_OUT,
      LANGUAGE,
      HELP,
    ],
  },
  { name: 'check', wants: ['fittings'], least: 1, open: true, options: [WORKSHOP, QUANTITY, JSON_OUT, LANGUAGE, HELP] },
  {
    name: 'why',
    wants: ['fitting', 'part', 'operation'],
    least: 1,
    options: [WORKSHOP, GRAPH, { name: 'out', takes: 'folder', beside: GRAPH.name }, JSON_OUT, LANGUAGE, HELP],
  },
  {
    name: 'size',
    wants: ['fitting'],
    least: 1,
    options: [{ name: 'vary', takes: 'size' }, { name: 'out', takes: 'picture', beside: 'vary' }, WORKSHOP, JSON_OUT, LANGUAGE, HELP],
  },
  {
    name: 'look',
    wants: ['subject', 'about'],
    least: 2,
    open: true,
    judges: true,
    options: [{ name: 'tool', takes: 'one', any: TOOLS }, WORKSHOP, JSON_OUT, LANGUAGE, HELP],
  },
  { name: 'new', wants: ['kind', 'new-file'], least: 1, options: [LANGUAGE, HELP] },
  { name: 'reopen', wants: ['sheet-file'], least: 1, options: [{ name: 'out', takes: 'folder' }, JSON_OUT, LANGUAGE, HELP] },
  {
    name: 'exercise',
    wants: ['fitting'],
    least: 1,
    options: [WORKSHOP, PART, { name: 'out', takes: 'folder' }, ...LOOKS, JSON_OUT, LANGUAGE, HELP],
  },
  { name: 'mark', wants: ['fitting', 'order'], least: 1, options: [WORKSHOP, PART, JSON_OUT, LANGUAGE, HELP] },
];

/** What may stand without a command. */
export const ALONE: readonly Option[] = [LANGUAGE, HELP, { name: 'version', takes: 'nothing' }];
