/** A sheet as plain text, for a terminal, a screen reader or a diff. It transcribes the view; the order of things is the page's own. */
import type { Document } from '../model/display.ts';
import type {
  CautionSaid,
  CautionShown,
  GripPage,
  LessonShown,
  PlainPage,
  Row,
  Section,
  SheetPage,
  SheetView,
  SignShown,
  StepShown,
} from '../model/sheet.ts';

const WIDE = 100;
const STEP = '    ';
const GAP = '  ';
/** A blank at which paper breaks no line. */
const UNBROKEN = '\u00a0';

/** `document` gives the sheet that each page begins on, so that 'sheet 4' in a text can be found. Ends with a newline. */
export function writeText(view: SheetView, document: Document): string {
  const starts = startsOf(view, document);
  const pages = view.pages.map((page, i) => pageText(page, view, sheetNo(view, starts[i], document)));
  return `${[titleOf(view), ...pages].join('\n\n')}\n`.replaceAll(UNBROKEN, ' ');
}

function titleOf(view: SheetView): string {
  return [view.title, view.foot, ...(view.draft ? ['', view.draft] : [])].join('\n');
}

/** For each page of the view the number of the first sheet that carries its heading, going forward; of one that was joined to the page before, that page's. */
function startsOf(view: SheetView, document: Document): readonly number[] {
  let from = 0;
  return view.pages.map((page) => {
    const found = document.pages.findIndex((sheet, i) => i >= from && sheet.heading === page.heading);
    if (found >= 0) from = found + 1;
    return from;
  });
}

function sheetNo(view: SheetView, n: number | undefined, document: Document): string {
  return n ? view.sheetNo.replace('{n}', String(n)).replace('{of}', String(document.pages.length)) : '';
}

function pageText(page: SheetPage, view: SheetView, no: string): string {
  const rule = '='.repeat(WIDE);
  const draft = view.draft ? [view.draft] : [];
  const lines = page.kind === 'grip' ? gripLines(page) : plainLines(page);
  return trimmed([rule, apart(page.heading, no), page.about, ...draft, '', ...lines, ...footLines(page.cautions)]);
}

function footLines(cautions: readonly CautionSaid[]): readonly string[] {
  const lines = cautions.filter(({ text }) => text !== '').flatMap(({ text, signs }) => wrapped([text, ...signsLine(signs)].join(' '), ''));
  return lines.length > 0 ? ['', ...lines] : [];
}

const signsLine = (signs: readonly SignShown[]): readonly string[] => signs.map(({ name }) => `[${name}]`);

function gripLines(page: GripPage): readonly string[] {
  const hold = page.hold.flatMap((h) => [`${h.label}: ${h.title}`, ...wrapped(h.text, STEP)]);
  const blocks = page.blocks.flatMap((block) => [
    '',
    ...[block.title, block.text].filter((text) => text !== ''),
    ...block.rows.flatMap((row) => rowLines(row, page)),
  ]);
  const { title, text, boxes } = page.checkpoint;
  const once = page.once === '' ? [] : ['', ...wrapped(page.once, STEP)];
  return [
    ...hold,
    ...once,
    ...blocks,
    '',
    title,
    ...text.flatMap((line) => wrapped(line, STEP)),
    ...boxes.map((box) => `${STEP}[        ] ${box}`),
  ];
}

function rowLines(row: Row, page: GripPage): readonly string[] {
  const { columns } = page;
  const figures = [
    [columns.rpm, row.rpm],
    [columns.cuts, row.cuts],
    [columns.dial, row.dial.replaceAll('\n', ' · ')],
  ].filter(([, value]) => value !== '');
  const sizes = row.sizes.map((s) => [s.letter, s.text, s.limits, s.after].filter((piece) => piece !== '').join(' '));
  return [
    `[ ] ${row.number.padStart(3)}  ${row.title}`,
    ...(row.note ? wrapped(row.note, STEP + STEP) : []),
    ...sizes.map((size) => `${STEP}${STEP}${columns.size}: ${size}${row.measure === 'box' ? `   ${columns.measured}: ________` : ''}`),
    ...(figures.length > 0 ? wrapped(figures.map(([label, value]) => `${label} ${value}`).join(' · '), STEP + STEP) : []),
    ...(row.under ? wrapped(row.under, STEP + STEP) : []),
    ...row.says.flatMap((line) => wrapped(`! ${line}`, STEP + STEP)),
    ...(row.panel ? [row.panel.why, row.panel.stop].flatMap((p) => (p.text ? wrapped(`${p.heading}: ${p.text}`, STEP + STEP) : [])) : []),
  ];
}

function plainLines(page: PlainPage): readonly string[] {
  return [...(page.right ? [page.right] : []), ...page.sections.flatMap((section) => ['', section.title, ...sectionLines(section)])];
}

function sectionLines(section: Section): readonly string[] {
  switch (section.kind) {
    case 'table':
      return [...introduction(section.text), ...tableLines(section)];
    case 'notes':
      return section.items.flatMap((item) => wrapped(section.manner === 'ticked' ? `[ ] ${item}` : item, STEP));
    case 'steps':
      return section.steps.flatMap(stepLines);
    case 'boxes':
      return [...introduction(section.text), ...section.boxes.flatMap(boxLines), ...(section.sum ? wrapped(section.sum, STEP) : [])];
    case 'trains':
      return [
        ...introduction(section.text),
        ...section.trains.flatMap(({ title, lines }) => [
          '',
          ...wrapped(title, STEP),
          ...lines.flatMap((line) => wrapped(line, STEP + STEP)),
        ]),
      ];
    case 'cautions':
      return section.cautions.flatMap(cautionLines);
    case 'arrangement':
      return [section.shown.alt, ...section.shown.notes].flatMap((line) => wrapped(line, STEP));
    case 'curve':
      return [...section.curve.notes, ...section.curve.points.map((point) => point.text)].flatMap((line) => wrapped(line, STEP));
    case 'lessons':
      return section.lessons.flatMap(lessonLines);
    case 'strips':
      return [
        ...introduction(section.text),
        '',
        ...section.strips.flatMap(({ letter, title, note, size, hold }) => [
          `${letter.padEnd(STEP.length)}${[title, size].filter((piece) => piece !== '').join(' · ')}`,
          ...wrapped([hold, note].filter((piece) => piece !== '').join(' · '), STEP),
        ]),
      ];
    case 'pictures':
      return [...(section.whole ? wrapped(section.whole.alt, STEP) : []), ...section.pictures.map(({ caption }) => STEP + caption)];
  }
}

function cautionLines({ title, text, signs }: CautionShown): readonly string[] {
  const first = title === '' ? [] : [STEP + [title, ...signsLine(signs)].join(' ')];
  return [...first, ...wrapped(text, title === '' ? STEP : STEP + GAP)];
}

function lessonLines({ number, title, note, signs, facts, dial, boxes }: LessonShown): readonly string[] {
  return [
    '',
    [`${number.padStart(STEP.length)} `, title, ...signsLine(signs)].join(' '),
    ...(note ? wrapped(note, STEP + GAP) : []),
    ...facts.flatMap(({ label, text }) => text.split('\n').map((line) => `${STEP}${GAP}${label}: ${line}`)),
    ...(dial ? wrapped(dial.says, STEP + GAP) : []),
    ...boxes.flatMap(({ heading, text }) => wrapped(`${heading}: ${text}`, STEP + GAP)),
  ];
}

function introduction(text: string): readonly string[] {
  return text ? wrapped(text, STEP) : [];
}

function boxLines({ letter, label, hint }: { readonly letter: string; readonly label: string; readonly hint: string }): readonly string[] {
  return [`${STEP}${[letter, label].filter((piece) => piece !== '').join(' ')}: ________`, ...(hint ? wrapped(hint, STEP + STEP) : [])];
}

function stepLines(step: StepShown, i: number): readonly string[] {
  const otherwise = step.otherwise ? wrapped(step.otherwise, STEP + STEP) : [];
  return [
    `[ ] ${i + 1}  ${step.title}`,
    ...wrapped(step.text, STEP + STEP),
    ...otherwise,
    ...step.boxes.map((box) => `${STEP}${STEP}${box}: ________`),
  ];
}

/** Columns as wide as their longest entry; a table that is too wide is told row by row, an entry a line. */
function tableLines({ columns, rows }: Extract<Section, { kind: 'table' }>): readonly string[] {
  const widths = columns.map((column, i) => Math.max(column.label.length, ...rows.map((row) => row[i]?.length ?? 0)));
  const whole = STEP.length + widths.reduce((sum, width) => sum + width + GAP.length, 0);
  if (whole > WIDE)
    return rows.flatMap((row) => ['', ...row.flatMap((entry, i) => (entry ? wrapped(`${columns[i]?.label ?? ''}: ${entry}`, STEP) : []))]);
  const line = (entries: readonly string[]): string => STEP + entries.map((entry, i) => entry.padEnd(widths[i] ?? 0)).join(GAP);
  return [columns.map((column) => column.label), ...rows].map(line);
}

function apart(left: string, right: string): string {
  return left + right.padStart(Math.max(right.length + GAP.length, WIDE - left.length));
}

/** Lines of at most WIDE characters, each set in by `indent`, all but the first a little more. */
/** Lines that a page keeps apart run on here. */
const BLANKS = /[ \n]/;

function wrapped(text: string, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(BLANKS)) {
    const longer = line.trim() === '' ? line + word : `${line} ${word}`;
    if (longer.length > WIDE && line.trim() !== '') {
      lines.push(line);
      line = `${indent}${GAP}${word}`;
    } else line = longer;
  }
  return [...lines, line];
}

/** What is still too wide is broken where it stands. */
function trimmed(lines: readonly string[]): string {
  return lines
    .flatMap((line) => (line.length > WIDE ? wrapped(line.trimStart(), line.slice(0, line.length - line.trimStart().length)) : [line]))
    .map((line) => line.trimEnd())
    .join('\n');
}
