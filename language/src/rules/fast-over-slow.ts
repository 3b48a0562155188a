import type { Fix, Layer } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { filmOf, nextBelow } from './beneath.ts';
import { isMostlyAlkyd, isOilFilm, on } from './films.ts';
import { addFields, replace } from './fixes.ts';
import { daysBetween, waitWords } from './laid.ts';
import { VEIL_UM } from './limits.ts';
import type { Rule } from './rule.ts';
import { Called, called, figure, ours, practice, published } from './words.ts';

/** How many times longer the lower film takes to be touch-dry. */
const SLOWER = 2;
/** Days after which any film is firm, however thick: what lies further down need not be looked at. */
const LONG_AGO = 5 * 365;

export function waitLonger(layer: Layer, days: number): Fix[] {
  const words = waitWords(days);
  return layer.wait
    ? [replace(`Wait ${words} after ${layer.name}`, layer.wait.place, words)]
    : addFields(`Wait ${words} after ${layer.name}`, layer, [`wait ${words}`]);
}

/** The slow film beneath that would be least firm when `index` is laid. */
function softest(study: Study, index: number) {
  const upper = study.layers[index];
  if (!upper?.drying) return undefined;
  let found: { below: (typeof study.layers)[number]; area: string; days: number; firm: number } | undefined;
  for (const area of upper.areas)
    for (let below = nextBelow(study, upper, area); below; below = nextBelow(study, below, area)) {
      const days = daysBetween(study, below.layer, upper.layer);
      if (days === undefined || days > LONG_AGO) break;
      if (!isOilFilm(below) || !below.drying || isMostlyAlkyd(below.composition)) continue;
      if (below.layer.kind === 'varnish' || below.layer.kind === 'ground') continue;
      if (below.drying.touchDry.likely < SLOWER * upper.drying.touchDry.likely) continue;
      const firm = below.drying.firm.likely;
      if (days >= firm - 1e-6) continue;
      if (!found || firm - days > found.firm - found.days) found = { below, area, days, firm };
    }
  return found;
}

/** A film that sets in a day on one that goes on moving below it. */
export const fastOverSlow: Rule = {
  id: 'fast-over-slow',
  title: 'Fast film over a slow one not yet firm',
  severity: 'warning',
  why: 'An alkyd film sets within a day and shrinks no more; a thick oil film under it takes up oxygen and moves for weeks. The stiff skin on top is torn by what moves below.',
  whatToDo: 'Wait until the lower film is firm, or change places: the alkyd below, the slow oil above.',
  sources: [
    practice('alkyds under oils, not over them, until the oil is firm'),
    published("Kay, The Painter's Guide to Studio Methods and Materials (1983) p.199, for the alkyd’s times"),
    ours('firm as the drying model has it: it grows with the thickness of the film'),
  ],
  appliesTo: ['plan'],
  *check(plan, study) {
    for (const upper of study.layers) {
      if (!isOilFilm(upper) || upper.layer.kind === 'varnish' || !isMostlyAlkyd(upper.composition)) continue;
      const found = softest(study, upper.layer.index);
      if (!found) continue;
      const { below, area, days, firm } = found;
      yield {
        message: `${Called(upper.layer)} is mostly alkyd and sets fast; ${called(below.layer)} below it${on(plan, area)} is then ${figure(days)} days old and firm after about ${figure(firm)}. Wait longer, or lay the alkyd below and the oil above.`,
        place: upper.layer.namePlace,
        layer: upper.layer.index,
        severity: filmOf(upper) < VEIL_UM ? 'info' : 'warning',
        related: [
          {
            message: `${Called(below.layer)} is firm after about ${figure(firm)} days`,
            place: below.layer.namePlace,
          },
        ],
        fixes: below.layer.painted || upper.layer.painted ? [] : waitLonger(below.layer, firm),
      };
    }
  },
};
