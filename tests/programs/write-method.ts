/**
 * Writes the worked example of docs/method.md anew, between its marks, from the demo's plan. A test asks that it is current.
 * Run: npm run method
 */
import { readFileSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { compile } from '../../src/compile.ts';
import { workedExample } from './method/example.ts';

const root = new URL(process.argv[2] ?? './', `file://${process.cwd()}/`);
const file = (path: string) => ({ name: path.slice(path.lastIndexOf('/') + 1), text: readFileSync(new URL(path, root), 'utf8') });
const inputs = { fitting: file('specs/fittings/launch-feed-check-valve.yaml') };
const { plan } = compile(inputs, { workshop: file('specs/workshops/bench-lathe.yaml') });
const planned = plan?.parts.find(({ part }) => part.id === 'seat-piece');
if (!planned) throw new Error('the demo has no plan');
const page = new URL('docs/method.md', root);
const [before, rest = ''] = readFileSync(page, 'utf8').split('<!-- example -->\n');
const after = rest.split('<!-- end of example -->')[1] ?? '';
writeFileSync(page, `${before}<!-- example -->\n${workedExample(planned)}\n<!-- end of example -->${after}`);
