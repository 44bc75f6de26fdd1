/** How a sheet is to look; nothing of it changes a plan. */

export type SheetWish = {
  /** What lengths are written in; millimetres when absent. */
  readonly units?: 'mm' | 'inch';
  /** A4 when absent. */
  readonly paper?: 'a4' | 'letter';
  /** Big: for poor light; as usual when absent. */
  readonly type?: 'usual' | 'big';
};

export const WISHES = { units: ['mm', 'inch'], paper: ['a4', 'letter'], type: ['usual', 'big'] } as const;
