/**
 * A sheet as words and numbers: all that is printed is decided here, nothing of where it stands. Plain records only.
 * Two things only the layout knows: how many sheets there are and on which one a page begins. They stand in the texts as marks,
 * '{n}', '{of}' and '{sheet:<part>/<set-up>}' ('@2' after it: of its second making), until the layout puts the figures in.
 */
import type { SignId } from '../handbook/signs.ts';
import type { Arrangement } from './arrangement.ts';
import type { DimId, OpId, PartId } from './ids.ts';

export type SheetView = {
  readonly title: string;
  readonly language: string;
  readonly mark: string;
  /** Right end of every foot: units, temperature, plan's mark. */
  readonly foot: string;
  /** 'sheet {n} of {of}' */
  readonly sheetNo: string;
  /** What a link says: '{n}' for the sheet, '{heading}' for what stands there. */
  readonly toSheet: string;
  /** Said on a sheet that carries on the one before. */
  readonly goesOn: string;
  /** Printed at the head of every page; absent when the plan is proved. */
  readonly draft?: string;
  readonly pages: readonly SheetPage[];
};
export type SheetPage = GripPage | PlainPage;

/** One grip (or work at the bench): who holds the part, the picture, the operations, the checkpoint. */
export type GripPage = {
  readonly kind: 'grip';
  /** '<part>/<set-up>': what '{sheet:…}' names. */
  readonly key: string;
  readonly part: PartId;
  /** Place in the part's route, from 0. */
  readonly setUp: number;
  /** Entry in the list of contents. */
  readonly heading: string;
  readonly name: string;
  readonly about: string;
  readonly grip: string;
  readonly of: string;
  /** On the first page of its part. */
  readonly strip?: StripShown;
  readonly hold: readonly { readonly label: string; readonly title: string; readonly text: string }[];
  /** What holds for all its rows, over them: dials, tools, lubricant, where the order is habit; '' where there is nothing. */
  readonly once: string;
  readonly columns: {
    readonly do: string;
    readonly size: string;
    readonly rpm: string;
    readonly cuts: string;
    readonly dial: string;
    readonly measured: string;
  };
  /** The first block is the grip's own; one with a title is work at the bench that follows it. */
  readonly blocks: readonly { readonly title: string; readonly text: string; readonly rows: readonly Row[] }[];
  readonly checkpoint: { readonly title: string; readonly text: readonly string[]; readonly boxes: readonly string[] };
  /** Left end of the foot: what is dangerous here. */
  readonly cautions: readonly CautionSaid[];
  /** Why it stands at this place of the day, for who learns; where tooling that stays in the chuck serves several holds. */
  readonly day?: DayShown;
};
/** `ask`: a question about it, on the page of that tooling. */
export type DayShown = { readonly why: string; readonly otherwise: string; readonly ask?: string };
/** From bar to part: small half-sections side by side, the bar first. `slender`: they are long and thin. */
export type StripShown = { readonly title: string; readonly cells: readonly StripCell[]; readonly slender?: true };
/** `first`, `last`: the steps of the part's route, counted from 0, that the little picture shows done as new; without them it is the bar. */
export type StripCell = {
  readonly label: string;
  readonly text: string;
  readonly alt: string;
  readonly steps?: { readonly first: number; readonly last: number };
};
/** One operation. */
export type Row = {
  readonly op: OpId;
  /** In tens through the part: what the balloon shows. */
  readonly number: string;
  readonly title: string;
  readonly note: string;
  /** What is read off caliper or micrometer, the one that makes the surface first. */
  readonly sizes: readonly SizeShown[];
  readonly rpm: string;
  readonly cuts: string;
  /** A line a slide. */
  readonly dial: string;
  /** Is there a figure to write down? */
  readonly measure: 'box' | 'nothing';
  /** Checks and cautions of this operation, one line each. */
  readonly says: readonly string[];
  /** One line across the row, beneath it: dials from their nought, what binds the cut, set-up. */
  readonly under: string;
  readonly panel?: { readonly why: Paragraph; readonly stop: Paragraph };
};
/** `letter` stands for the value in the picture where that cannot hold it; `after` follows the value ('from A'). */
export type SizeShown = {
  readonly dim: DimId | '';
  readonly text: string;
  readonly limits: string;
  readonly after: string;
  readonly letter: string;
};
export type Paragraph = { readonly heading: string; readonly text: string };

/** Cover, assembly, tests, proof: headed sections one under the other. */
export type PlainPage = {
  readonly kind: 'plain';
  readonly key: string;
  readonly heading: string;
  readonly name: string;
  readonly about: string;
  readonly right: string;
  readonly sections: readonly Section[];
  readonly cautions: readonly CautionSaid[];
  /** It may stand on the sheet of the page before it, if either would leave most of its own empty. */
  readonly mayFollow?: true;
};
/** `key`: what '{sheet:…}' may name the sheet by on which it begins. */
export type Section = { readonly key?: string } & (
  | {
      readonly kind: 'table';
      readonly title: string;
      readonly text: string;
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
    }
  /** Paragraphs; `ticked`: things, side by side where short. */
  | { readonly kind: 'notes'; readonly title: string; readonly items: readonly string[]; readonly manner: 'plain' | 'ticked' | 'panel' }
  /** Numbered, in this order, each with a box to tick; `otherwise`: what to do when it fails; `boxes`: figures to write down there. */
  | { readonly kind: 'steps'; readonly title: string; readonly steps: readonly StepShown[] }
  /** Boxes to fill, in the order in which they are measured. `letter` is what the sum below calls it. */
  | {
      readonly kind: 'boxes';
      readonly title: string;
      readonly text: string;
      readonly boxes: readonly { readonly letter: string; readonly label: string; readonly hint: string }[];
      readonly sum: string;
    }
  /** Trains of change wheels, each a picture with what to put where beside it. */
  | { readonly kind: 'trains'; readonly title: string; readonly text: string; readonly trains: readonly TrainShown[] }
  /** A curve on two axes, its points worth telling beside it. */
  | { readonly kind: 'curve'; readonly title: string; readonly curve: CurveShown }
  /** An operation each, with its own picture. */
  | { readonly kind: 'lessons'; readonly title: string; readonly legend: LessonLegend; readonly lessons: readonly LessonShown[] }
  /** Each with its safety signs. */
  | { readonly kind: 'cautions'; readonly title: string; readonly cautions: readonly CautionShown[] }
  /** To be cut out and put in order. */
  | { readonly kind: 'strips'; readonly title: string; readonly text: string; readonly strips: readonly StripToSort[] }
  /** The parts put together; `alt`: the picture in words, `notes`: beside it. */
  | { readonly kind: 'arrangement'; readonly title: string; readonly shown: ArrangementShown }
  | {
      readonly kind: 'pictures';
      readonly title: string;
      readonly whole?: WholeShown;
      readonly pictures: readonly { readonly part: PartId; readonly caption: string }[];
    }
);
/** The parts put together, in perspective; `alt`: the picture in words. */
export type WholeShown = { readonly arrangement: Arrangement; readonly alt: string; readonly caption: string };
export type ArrangementShown = {
  readonly arrangement: Arrangement;
  readonly alt: string;
  readonly up: string;
  readonly in: string;
  readonly out: string;
  /** By part; bought things by 'item <item>', the ball by 'ball'. */
  readonly names: Readonly<Record<string, string>>;
  readonly notes: readonly string[];
};
/** `name`: a sign's number and meaning. */
export type SignShown = { readonly id: SignId; readonly name: string };
/** A danger and its safety signs. */
export type CautionSaid = { readonly text: string; readonly signs: readonly SignShown[] };
export type CautionShown = CautionSaid & { readonly title: string };
/** What new surfaces and taken metal are called beside their marks. */
export type LessonLegend = { readonly made: string; readonly taken: string };
/** `step`: its place in the part's route, from 0. `boxes`: why here, what goes wrong otherwise, how to tell, how it is set. */
export type LessonShown = {
  readonly part: PartId;
  readonly step: number;
  readonly number: string;
  readonly title: string;
  readonly note: string;
  /** What is dangerous in this operation itself. */
  readonly signs: readonly SignShown[];
  /** `read`: it is what the dial shows. */
  readonly facts: readonly { readonly label: string; readonly text: string; readonly read?: true }[];
  readonly dial?: DialShown;
  readonly boxes: readonly Paragraph[];
};
/** `round`: divisions in a turn; the hand points to `divisions` after `turns` whole turns. */
export type DialShown = { readonly round: number; readonly turns: number; readonly divisions: number; readonly says: string };
/** `hold`: in which hold it is done; `part`: of what. */
export type StripToSort = {
  readonly letter: string;
  readonly title: string;
  readonly note: string;
  readonly size: string;
  readonly hold: string;
  readonly part: string;
};
/** `alt`: the picture in words; `notes`: over the points; `stop`: where the curve ends, and what ends it. */
export type CurveShown = {
  readonly notes: readonly string[];
  readonly x: AxisShown;
  readonly y: AxisShown;
  readonly curve: readonly PointShown[];
  readonly bare: readonly PointShown[];
  readonly levels: readonly { readonly at: number; readonly label: string }[];
  readonly stop: { readonly at: number; readonly label: string };
  readonly points: readonly (PointShown & { readonly text: string })[];
  readonly alt: string;
};
export type AxisShown = {
  readonly label: string;
  readonly to: number;
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
};
export type PointShown = { readonly x: number; readonly y: number };
/** `alt`: the picture in words. */
export type TrainShown = {
  readonly title: string;
  readonly lines: readonly string[];
  readonly shafts: readonly ShaftShown[];
  readonly alt: string;
};
/** Wheels on it, by their teeth: the one that is driven before the one that drives. */
export type ShaftShown = { readonly label: string; readonly wheels: readonly number[] };
export type StepShown = { readonly title: string; readonly text: string; readonly otherwise: string; readonly boxes: readonly string[] };
/** `share`: of the width, against the others'. */
export type Column = { readonly label: string; readonly share: number; readonly manner: 'text' | 'strong' | 'figure' | 'small' };
