/** What `new turned-part` asks, in this order; the words are those of the keys. Side features and single lengths are left to the file. */
import type { Step } from '../question.ts';

export const TURNED_PART_QUESTIONS: readonly Step[] = [
  { key: 'title', usual: 'Distance piece' },
  { key: 'name', usual: 'distance-piece' },
  { key: 'material', usual: 'PB102' },
  { key: 'quantity', usual: '1' },
  { key: 'bar' },
  { key: 'first.letter', usual: 'A' },
  { key: 'second.letter', usual: 'B' },
  {
    list: 'outside',
    least: 1,
    each: [
      { key: 'name', usual: 'barrel' },
      { key: 'diameter', usual: '12 mm' },
      { key: 'thread', unless: 'diameter' },
      { key: 'as-bar', unless: 'thread', usual: 'yes' },
      { key: 'length', usual: '20 mm' },
      { key: 'role' },
    ],
  },
  {
    list: 'inside',
    least: 0,
    each: [
      { key: 'name', usual: 'bore' },
      { key: 'diameter', usual: '6 mm' },
      { key: 'thread', unless: 'diameter' },
      { key: 'from', usual: 'first' },
      { key: 'depth', usual: 'through' },
      { key: 'role' },
    ],
  },
];
