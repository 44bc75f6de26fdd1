/** `why --graph`: what must come before what, as a picture (SVG) and for the tools that draw graphs (DOT), a file of each for each part. */
import { basename, extname } from 'node:path';
import { writeAll } from '../files.ts';
import type { WhyPart } from '../model/why.ts';
import { dotOf, graphOf } from '../render/graph.ts';
import { svgOfGraph } from '../render/graph-svg.ts';
import { tell } from './console.ts';
import { failedClaims, type Job, type Options, plainFinding } from './job.ts';
import type { Console, Exit } from './tools.ts';

const FOLDER = 'out';

/** Named after the fitting's file and the part. */
export function writeGraphs(path: string, parts: readonly WhyPart[], job: Job, options: Options, console: Console): Exit {
  const files = parts.flatMap((part) => {
    const graph = graphOf(part, job.words);
    const name = `${basename(path, extname(path))}-${part.part}`;
    return [
      { name: `${name}.svg`, bytes: bytesOf(svgOfGraph(graph, job.words)) },
      { name: `${name}.dot`, bytes: bytesOf(dotOf(graph)) },
    ];
  });
  const written = writeAll(options.out ?? FOLDER, files);
  const paths = written.value ?? [];
  const unproved = job.compiled.plan !== undefined && failedClaims(job.compiled.plan).length > 0;
  const exit = written.value ? (unproved ? 2 : 0) : 1;
  if ('json' in options)
    console.out(`${JSON.stringify({ exit, written: paths, found: written.found.map((d) => plainFinding(d, job.words)) }, null, 2)}\n`);
  else {
    tell(written.found, job.sources, job.words, console);
    for (const each of paths) console.out(`${job.words.say('cli.wrote', { path: each })}\n`);
  }
  return exit;
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
