/** Colours of a study. */

import type { Plan } from '../plan/plan.ts';
import type { Film } from './film.ts';
import { createMemo, type Memo } from './memo.ts';
import type { Stacks } from './stacks.ts';
import type { AreaStudy, ColourOn } from './study.ts';

export type ColourMemo = Memo<unknown>;
export const createColourMemo = (): ColourMemo => createMemo();

export interface Colouring {
  layer(index: number): readonly ColourOn[];
  buildUp(area: string): ReturnType<AreaStudy['buildUp']>;
  target(area: string): ReturnType<AreaStudy['target']>;
}

export function colouring(
  _plan: Plan,
  _films: readonly { readonly film: Film }[],
  _stacks: Stacks,
  _memo: ColourMemo,
): Colouring {
  return { layer: () => [], buildUp: () => [], target: () => undefined };
}
