/** The reasons of a plan: gathered as records, then told. */
import { describe, expect, it } from 'vitest';
import { words } from '../../src/base/words.ts';
import { loadWords } from '../../src/files.ts';
import { numbers, why, whyNot } from '../../src/phases/why.ts';
import { showWhyAll, showWhyNot, showWhyOperation, showWhyPart } from '../../src/render/why.ts';
import { because, plan, planned } from './sample.ts';

const view = why(plan);
const [plug] = view.parts;
if (!plug) throw new Error('the sample has a part');
const operation = (number: number) => {
  const found = plug.operations.find((o) => o.number === number);
  if (!found) throw new Error(`the sample has no operation ${number}`);
  return found;
};
/** The sample's own rules, said in a few words each. */
const RULES = [
  'bore-it',
  'drill-it',
  'face-it',
  'way-drill-and-bore',
  'way-ream',
  'way-face',
  'held-bar',
  'held-jaws',
  'drill-before-bore',
  'face-before-drill',
  'grip-too-short',
];
const ruleWords = RULES.flatMap((id) =>
  ['title', 'why', 'otherwise'].map((part) => `{{#*inline "rule.${id}.${part}"}}${id} ${part}{{/inline}}`),
).join('');
const say = words({ 'why.hbs': loadWords()['why.hbs'] ?? '', 'rules.hbs': ruleWords });

describe('reasons', () => {
  it('number the operations in tens, in the order of work', () => {
    expect([...numbers(planned.route)]).toEqual([
      ['plug/hole/drill', 10],
      ['plug/second/face', 20],
      ['plug/hole/bore', 30],
    ]);
  });
  it('name what must come before and after, with its force', () => {
    expect(operation(30).comesAfter).toEqual([
      { op: 'plug/hole/drill', number: 10, than: 'plug/hole/bore', force: 'strict', because: because('drill-before-bore') },
    ]);
    expect(operation(10).comesBefore.map((m) => m.op)).toEqual(['plug/hole/bore']);
    expect(operation(10).comesAfter.map((m) => m.force)).toEqual(['preferred']);
  });
  it('leave out a before that binds only from the other end', () => {
    expect(operation(30).comesAfter.map((m) => m.because.rule)).not.toContain('idle');
  });
  it('name the ends that an operation cannot be done from, and the other ways that the workshop has', () => {
    expect(operation(30).notFrom).toEqual(['first']);
    expect(operation(10).notFrom).toEqual([]);
    expect(operation(30).method.besides.map((m) => m.name)).toEqual(['ream']);
    expect(operation(20).method.besides).toEqual([]);
  });
  it('say by which field a runner-up is dearer', () => {
    expect(plug.runnersUp.map((r) => r.dearerBy)).toEqual(['tooling']);
  });
  it('refuse a route whose operation no chosen method has', () => {
    const route = { ...planned.route, chosen: planned.route.chosen.slice(1) };
    expect(() => why({ ...plan, parts: [{ ...planned, route }] })).toThrow(/plug\/hole\/drill/);
  });
});

describe('told', () => {
  it('all parts in short', () => {
    expect(showWhyAll(view, say)).toBe(`Plug

plug: 2 set-ups, 0 pieces of tooling to make, 2 tool changes, about 8 min of setting, 1 habit not kept.
  Proved best in 17 states; 2 orders are as good, this one among them.
  Set-up 1, operations 10 to 20: on the bar in the chuck, on diameter 20.00, 12.00 long; second end out; lengths from the first face cut.
  Set-up 2, operation 30: in the three-jaw chuck, on diameter 20.00, 12.00 long; second end out; lengths from the first face cut.
`);
  });
  it('one part', () => {
    const text = showWhyPart(plug, say);
    expect(text).toContain('  30 bore hole\n    bore-it title. bore-it why\n    after 10: drill-before-bore title\n');
    expect(text).toContain('    after 20: face-before-drill title (habit)');
    expect(text).toContain(
      'Habits that this order does not keep:\n  20 face second would come before 10 drill hole. face-before-drill why',
    );
    expect(text).toContain('Refused:\n  collet: grip-too-short title. There is 2.00 mm, it wants 16.00 mm.\n    grip-too-short why');
    expect(text).toContain('Next best:\n  bar, collet: 2 set-ups, 1 piece of tooling to make');
  });
  it('each operation once, also where two set-ups have one number (those at the bench have 0)', () => {
    const route = { ...planned.route, setUps: planned.route.setUps.map((setUp) => ({ ...setUp, no: 0 })) };
    const [both] = why({ ...plan, parts: [{ ...planned, route }] }).parts;
    const text = both ? showWhyPart(both, say) : '';
    for (const name of ['10 drill hole', '20 face second', '30 bore hole'])
      expect(text.split('\n').filter((line) => line.trim() === name)).toHaveLength(1);
  });
  it('one operation in full', () => {
    const text = showWhyOperation(plug, operation(30), say);
    expect(text).toContain('Cannot be done with the first end out.');
    expect(text).toContain(
      'Must come before it:\n  10 drill hole\n    drill-before-bore title. drill-before-bore why\n      Otherwise: drill-before-bore otherwise',
    );
    expect(text).toContain('Besides it there is:\n  way-ream title');
  });
  it('what cannot be planned', () => {
    const refusal = planned.route.refused[0];
    const text = showWhyNot(
      whyNot({
        part: 'plug',
        kind: 'plug',
        refused: refusal ? [refusal] : [],
        wouldHelp: refusal ? [refusal] : [],
        stuck: ['plug/hole/bore'],
      }),
      say,
    );
    expect(text).toContain("No order of work makes 'plug'");
    expect(text).toContain('Never possible: hole/bore.');
    expect(text).toContain('Any one of these, if it could be had, would make it possible:\n  collet');
  });
});
