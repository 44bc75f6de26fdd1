/** npm run chart -- FILE.json: a chart written as cuts and dimensions; which of its asked and printed limits hold. Exit 2 when one does not. */
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { judgeChart } from './chart/judge.ts';
import { PER, readChart } from './chart/read.ts';

const [file] = process.argv.slice(2);
if (file === undefined) {
  console.error('npm run chart -- FILE.json (its form is told in docs/method.md)');
  process.exit(1);
}
try {
  process.exitCode = run(readFileSync(file, 'utf8'));
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}

function run(text: string): 0 | 2 {
  const chart = readChart(text);
  const { dimensions, found, holds } = judgeChart(chart);
  const show = (units: number): string => String(Number((units / PER[chart.unit]).toFixed(chart.unit === 'mm' ? 4 : 6)));
  console.log(`${chart.title}\n${chart.source}\n`);
  for (const one of found)
    console.log(
      one.limits
        ? `${one.cut} may be ${show(one.limits.lo)} to ${show(one.limits.hi)}`
        : `${one.cut} cannot be: its dimensions are overrun by ${show(one.short)} before it is cut`,
    );
  const rows = [
    ['dimension', 'links', 'worst case', 'statistical', 'asked', 'as printed'],
    ...dimensions.map((one) => [
      one.name,
      one.links.map((link) => `${link.sign === 1 ? '+' : '-'}${link.dim}`).join(' '),
      `${show(one.worst.lo)} to ${show(one.worst.hi)}`,
      `${show(one.likely.lo)} to ${show(one.likely.hi)}`,
      one.short === 0 ? 'holds' : `fails by ${show(one.short)}`,
      one.asPrinted === undefined ? '' : one.asPrinted ? 'yes' : 'NO',
    ]),
  ];
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  for (const row of rows)
    console.log(
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    );
  return holds ? 0 : 2;
}
