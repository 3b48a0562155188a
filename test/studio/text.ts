/** Studies of plans as text, the way every reader of a study gets them. */
import { readPlan } from '../../language/src/plan/read.ts';
import type { Study } from '../../language/src/results/study.ts';
import { study } from '../../language/src/study/build.ts';

export const studied = (text: string): Study => study(readPlan(text, 'file:///made-up.paintplan'));
