/** The graph of befores: reduced, in DOT, and laid out so that nothing stands on anything. */
import { describe, expect, it } from 'vitest';
import type { WhyMust, WhyOperation, WhyPart } from '../../src/model/why.ts';
import { dotOf, type GraphArc, graphOf } from '../../src/render/graph.ts';
import { svgOfGraph } from '../../src/render/graph-svg.ts';
import { allWords } from './assets.ts';

const say = allWords(
  '{{#*inline "rule.of-the-test.title"}}Rule "one"{{/inline}}{{#*inline "rule.of-the-test-too.title"}}Rule two{{/inline}}',
);

type Before = readonly [first: number, then: number, force: WhyMust['force']];
/** Operations 0, 1, 2 … in that order of work. */
function partWith(count: number, befores: readonly Before[]): WhyPart {
  const id = (i: number): string => `p/f${i}/turn`;
  const operations = Array.from(
    { length: count },
    (_, i): WhyOperation => ({
      id: id(i),
      number: (i + 1) * 10,
      verb: 'turn',
      feature: `f${i}`,
      setUp: 0,
      from: i === 2 ? 'bench' : 'first',
      because: [],
      method: { name: 'turn', because: { rule: 'any', grounds: {} }, besides: [] },
      comesAfter: befores
        .filter(([, then]) => then === i)
        .map(([first, , force]) => ({
          op: id(first),
          number: 0,
          than: id(i),
          force,
          because: { rule: force === 'strict' ? 'of-the-test' : 'of-the-test-too', grounds: {} },
        })),
      comesBefore: [],
      notFrom: [],
    }),
  );
  const cost = { setUps: 1, tooling: 0, broken: 0, toolChanges: 1, minutes: 0, rank: 0 };
  const none = { habits: [], insteadOf: [], runnersUp: [], refused: [], broken: [] };
  return { part: 'p', setUps: [], operations, cost, asGood: '1', proved: 'best', states: 1, ...none };
}
const arcs = (graph: { readonly arcs: readonly GraphArc[] }): readonly Before[] => graph.arcs.map((a) => [a.first, a.then, a.force]);

const DIAMOND: readonly Before[] = [
  [0, 1, 'strict'],
  [0, 2, 'strict'],
  [1, 3, 'strict'],
  [2, 3, 'strict'],
];

describe('the graph of befores', () => {
  it.each<[string, readonly Before[], readonly Before[]]>([
    ['a strict one that strict ones imply is left out', [...DIAMOND, [0, 3, 'strict']], DIAMOND],
    [
      'a strict one that only a preferred one implies stays',
      [
        [0, 1, 'strict'],
        [1, 2, 'preferred'],
        [0, 2, 'strict'],
      ],
      [
        [0, 1, 'strict'],
        [0, 2, 'strict'],
        [1, 2, 'preferred'],
      ],
    ],
    [
      'a preferred one that kept ones imply is left out',
      [
        [0, 1, 'strict'],
        [1, 2, 'preferred'],
        [0, 2, 'preferred'],
      ],
      [
        [0, 1, 'strict'],
        [1, 2, 'preferred'],
      ],
    ],
    [
      'a preferred one that the order breaks stays, pointing back',
      [
        [0, 1, 'strict'],
        [2, 0, 'preferred'],
      ],
      [
        [0, 1, 'strict'],
        [2, 0, 'preferred'],
      ],
    ],
    [
      'one asked for twice is one, and strict if either is',
      [
        [0, 1, 'preferred'],
        [0, 1, 'strict'],
      ],
      [[0, 1, 'strict']],
    ],
  ])('%s', (_, befores, expected) => {
    expect(arcs(graphOf(partWith(4, befores), say))).toEqual(expected);
  });

  it('in DOT: boxes, arcs with their rules, dashes for habits, quotes escaped', () => {
    expect(
      dotOf(
        graphOf(
          partWith(3, [
            [0, 1, 'strict'],
            [1, 2, 'preferred'],
          ]),
          say,
        ),
      ).split('\n'),
    ).toEqual([
      'digraph "What must come before what: p" {',
      '  node [shape=box];',
      '  n0 [label="10 turn f0"];',
      '  n1 [label="20 turn f1"];',
      '  n2 [label="30 turn f2", style=rounded];',
      '  n0 -> n1 [label="Rule \\"one\\""];',
      '  n1 -> n2 [label="Rule two", style=dashed];',
      '}',
      '',
    ]);
  });

  it('in SVG: later below earlier, no box on another, every rule in the key', () => {
    const svg = svgOfGraph(graphOf(partWith(6, [...DIAMOND, [3, 4, 'strict'], [0, 5, 'preferred'], [5, 1, 'preferred']]), say), say);
    const boxes = [...svg.matchAll(/<rect x="([\d.]+)" y="([\d.]+)" width="48" height="8"/g)].map((m) => ({
      x: Number(m[1]),
      y: Number(m[2]),
    }));
    expect(boxes.length).toBe(6);
    for (const [first, then] of DIAMOND) expect(boxes[first]?.y).toBeLessThan(boxes[then]?.y ?? 0);
    const apart = boxes.every((a, i) => boxes.every((b, k) => i === k || Math.abs(a.x - b.x) >= 48 || Math.abs(a.y - b.y) >= 8));
    expect(apart).toBe(true);
    expect(svg).toContain('>a  Rule &quot;one&quot;</text>');
    expect(svg).toContain('>b  Rule two</text>');
    expect(svg.match(/stroke-dasharray/g)?.length).toBe(2);
  });
});
