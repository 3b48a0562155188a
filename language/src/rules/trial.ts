/** Trying fixes: how a text is read again, and how much of it may be. */
import type { PlanHost } from '../plan/host.ts';
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../results/study.ts';

/** Reads and studies a text with a memory of its own, so that a trial costs what it changes. */
export type Reread = (text: string, host: PlanHost) => { readonly plan: Plan; readonly study: Study };

/** How much text may be read again to try fixes. Whoever lists all fixes of a file sets a limit; `untried` tells what it cost. */
export interface Patience {
  /** characters */
  left: number;
  /** findings whose fixes were not tried, and so not offered */
  untried: number;
}

/** Characters that may be read again for one listing or one request: some seconds' work. */
export const MOST_TRIED = 5_000_000;
