/** What reading a text again can use of the last reading. */
import type { Pigment } from '../materials/types.ts';
import { createMemo, type Memo } from '../memory/memo.ts';
import type { Parsed } from '../syntax/chunk.ts';
import type { Plan } from './plan.ts';
import type { Surroundings } from './surroundings.ts';

/** What was made for the last text, and what has been made since. */
export interface PlanMemo {
  readonly parsed: Memo<Parsed>;
  /** the painter's own pigments: as long as nothing about one changes it stays the same object, as the catalogue's do */
  readonly pigments: Memo<Pigment>;
  /** used files read for the present text */
  used: Map<string, Plan>;
  /** by file */
  readonly surroundings: Map<string, Surroundings>;
}

export const createPlanMemo = (): PlanMemo => ({
  parsed: createMemo(),
  pigments: createMemo(),
  used: new Map(),
  surroundings: new Map(),
});
