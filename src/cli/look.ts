/**
 * `look`: one thing of the handbook, as a small table with its sources. Each subject loads its own tables only; without --workshop neither
 * the YAML reader nor the template engine is loaded.
 */
import type { Diagnostic } from '../base/diagnostics.ts';
import { nearest } from '../base/nearest.ts';
import { type PlainWords, plainWords } from '../base/plain-words.ts';
import { loadWordFile, loadWords, readUserFile } from '../files.ts';
import { type Answer, type Ask, COMMON_SHOP, type Found, type Shop, SUBJECTS, type Subject } from '../handbook/look/answer.ts';
import { answerText } from './look-text.ts';
import type { Console, Exit } from './tools.ts';

const WORDS = 'look.hbs';
const LOOK: Readonly<Record<Subject, (ask: Ask) => Promise<Found>>> = {
  thread: async (ask) => (await import('../handbook/look/thread.ts')).lookThread(ask),
  drill: async (ask) => (await import('../handbook/look/drill.ts')).lookDrill(ask),
  ball: async (ask) => (await import('../handbook/look/ball.ts')).lookBall(ask),
  fit: async (ask) => (await import('../handbook/look/fit.ts')).lookFit(ask),
  speed: async (ask) => (await import('../handbook/look/speed.ts')).lookSpeed(ask),
  steam: async (ask) => (await import('../handbook/look/steam.ts')).lookSteam(ask),
  wire: async (ask) => (await import('../handbook/look/wire.ts')).lookWire(ask),
  square: async (ask) => (await import('../handbook/look/square.ts')).lookSquare(ask),
  gears: async (ask) => (await import('../handbook/look/gears.ts')).lookGears(ask),
  material: async (ask) => (await import('../handbook/look/material.ts')).lookMaterial(ask),
};

export async function look(asked: readonly string[], options: Readonly<Record<string, string>>, console: Console): Promise<Exit> {
  const [word = '', ...rest] = asked;
  const subject = SUBJECTS.find((s) => s === word);
  if (!subject) return refuse([noSubject(word)], options, console, {});
  if (rest.length === 0) return refuse([noName(subject)], options, console, {});
  const shop = await shopOf(options);
  if ('found' in shop) return refuse(shop.found, options, console, shop.sources);
  const found = await LOOK[subject]({ words: rest.join(' '), shop: shop.shop });
  if ('several' in found) return refuse([severalStarts(found.several)], options, console, {});
  if ('unknown' in found) return refuse([notFound(subject, found)], options, console, {});
  const words = plainWords(loadWordFile(WORDS, options.language));
  console.out('json' in options ? `${JSON.stringify(plain(found.answer, words), null, 2)}\n` : answerText(found.answer, words));
  return 0;
}

type Sources = Readonly<Record<string, { readonly path: string; readonly text: string }>>;
type Shopped = { readonly shop: Shop } | { readonly found: readonly Diagnostic[]; readonly sources: Sources };

async function shopOf(options: Readonly<Record<string, string>>): Promise<Shopped> {
  const tool = options.tool === undefined ? undefined : options.tool === 'carbide' ? 'carbide' : 'HSS';
  const path = options.workshop;
  if (path === undefined) return { shop: { ...COMMON_SHOP, ...(tool === undefined ? {} : { tool }) } };
  const file = readUserFile(path);
  if (!file.value) return { found: file.found, sources: {} };
  const { readWorkshop } = await import('../phases/read.ts');
  const { value, found } = readWorkshop(file.value);
  if (!value) return { found, sources: { [file.value.name]: { path, text: file.value.text } } };
  const { drills, reamers, material } = value.tools;
  const { speeds } = value.lathe;
  const slowest = 'steps' in speeds ? Math.min(...speeds.steps) : speeds.from;
  return { shop: { name: value.name, drills, reamers, speeds, tool: tool ?? material, lathe: { ...value.lathe, slowest } } };
}

function noSubject(word: string): Diagnostic {
  return {
    code: 'cli.no-such-subject',
    severity: 'error',
    grounds: { word, any: SUBJECTS.join(', '), near: nearest(word, SUBJECTS) ?? '' },
  };
}

const noName = (subject: Subject): Diagnostic => ({
  code: 'cli.too-few',
  severity: 'error',
  grounds: { command: 'look', wants: 'about', subject },
});

function notFound(subject: Subject, { unknown, near }: { readonly unknown: string; readonly near: readonly string[] }): Diagnostic {
  return { code: 'cli.not-found', severity: 'error', grounds: { subject, word: unknown, near: near.join(', ') } };
}

const severalStarts = (word: string): Diagnostic => ({ code: 'cli.several-starts', severity: 'error', grounds: { word } });

async function refuse(
  found: readonly Diagnostic[],
  options: Readonly<Record<string, string>>,
  console: Console,
  sources: Sources,
): Promise<Exit> {
  const [{ speech }, { tell }, { plainFinding }] = await Promise.all([import('./speech.ts'), import('./console.ts'), import('./job.ts')]);
  const say = speech(loadWords(options.language), options.language);
  if ('json' in options) console.out(`${JSON.stringify({ exit: 1, found: found.map((d) => plainFinding(d, say)) }, null, 2)}\n`);
  else tell(found, sources, say, console);
  return 1;
}

/** For a program: ids and figures as they are (lengths in whole units of 0.1 um), and each label in words beside them. */
function plain(answer: Answer, words: PlainWords): Record<string, unknown> {
  const parts = answer.parts.map((part) => ({
    ...part,
    rows: part.rows.map((r) => ({ ...r, words: words.say(`look.row.${r.label}`, { about: r.about ?? '' }) })),
  }));
  return { subject: answer.subject, name: answer.name, unit: '0.1 um', parts, notes: answer.notes, sources: answer.sources };
}
