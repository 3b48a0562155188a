/** What reading a text again can use of the last reading. */
import type { Parsed } from '../syntax/chunk.ts';
import type { Plan } from './plan.ts';

/** Parses remembered between calls: those of the last text, and those made since. */
export interface PlanMemo {
  before: Map<string, Parsed>;
  now: Map<string, Parsed>;
  /** used files read for the present text */
  used: Map<string, Plan>;
}

export const createPlanMemo = (): PlanMemo => ({ before: new Map(), now: new Map(), used: new Map() });
