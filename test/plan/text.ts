/** Plans and studies of a text, the way every reader gets them. */
import type { Plan } from '../../language/src/plan/plan.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import type { Study } from '../../language/src/results/study.ts';
import { type StudyMemo, study } from '../../language/src/study/build.ts';

export const planned = (text: string): Plan => readPlan(text, 'file:///made-up.paintplan');
export const studied = (text: string, memo?: StudyMemo): Study => study(planned(text), memo);
