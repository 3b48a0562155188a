/** How much a pigment hastens or holds back its oil, as a factor on the time to touch-dry. */
import { assumption } from './sources.ts';
import type { DryingClass, Source } from './types.ts';

const factors: Readonly<Record<DryingClass, number>> = {
  'strong drier': 0.4,
  drier: 0.7,
  neutral: 1,
  retarder: 1.8,
  'strong retarder': 3,
};

export const dryingFactor = (kind: DryingClass): number => factors[kind];

export const dryingFactorsSource: Source = assumption(
  'our placeholders: handbooks rank pigments as driers and retarders but print no factors',
);
