/** What a tool takes of the paper, before it is known where it stands. */
import type { ToolShown } from '../view.ts';
import { OUT } from './place.ts';

/** Paper that it wants past the work; mm. */
export function toolRoom(tool: ToolShown | undefined): { readonly side: number; readonly end: number } {
  if (!tool) return { side: 0, end: 0 };
  return isFront(tool) ? { side: OUT.side, end: 0 } : { side: 0, end: OUT.end };
}

const isFront = ({ form, side, rolls }: ToolShown): boolean => side === 'outside' && form !== 'die' && !(form === 'saw' && rolls);
