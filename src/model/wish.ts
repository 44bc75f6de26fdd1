/** How a sheet is to look; nothing of it changes a plan. */

export type SheetWish = {
  /** What lengths are written in; millimetres when absent. */
  readonly units?: 'mm' | 'inch';
};

export const WISHES = { units: ['mm', 'inch'] } as const;
