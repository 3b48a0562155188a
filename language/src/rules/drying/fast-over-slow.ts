import type { Drying, LayerStudy } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { type FilmStudy, filmOf } from '../shared/beneath.ts';
import { isMostlyAlkyd, isOilFilm, on } from '../shared/films.ts';
import { waitLonger } from '../shared/laid.ts';
import { VEIL_UM } from '../shared/limits.ts';
import { softest } from '../shared/soft.ts';
import { figure, firmAfter, label, labelAtStart, ours, practice, published } from '../shared/words.ts';

/** How many times longer the lower film takes to be touch-dry. */
const SLOWER = 2;

/** A slow oil film, which an alkyd one would be laid on too soon. */
const isSlow = (l: LayerStudy): l is FilmStudy & { readonly drying: Drying } =>
  isOilFilm(l) &&
  l.drying !== undefined &&
  !isMostlyAlkyd(l.composition) &&
  l.layer.kind !== 'varnish' &&
  l.layer.kind !== 'ground';

const isFast = (l: LayerStudy): l is FilmStudy =>
  isOilFilm(l) && l.layer.kind !== 'varnish' && isMostlyAlkyd(l.composition);

/** What is below is slow beside what is above, and not as quick as another alkyd. */
const counts = (below: FilmStudy & { readonly drying: Drying }, { drying: fast }: FilmStudy): boolean =>
  fast !== undefined && below.drying.touchDry.likely >= SLOWER * fast.touchDry.likely;

/** A film that sets in a day on one that goes on moving below it. */
export const fastOverSlow: Rule = {
  id: 'fast-over-slow',
  title: 'Fast film over a slow one not yet firm',
  theme: 'drying',
  severity: 'warning',
  why: 'An alkyd film sets within a day and shrinks no more; a thick oil film under it takes up oxygen and moves for weeks. The stiff skin on top is torn by what moves below.',
  whatToDo: 'Wait until the lower film is firm, or change places: the alkyd below, the slow oil above.',
  sources: [
    practice('alkyds under oils, not over them, until the oil is firm'),
    published("Kay, The Painter's Guide to Studio Methods and Materials (1983) p.199, for the alkyd’s times"),
    ours('firm as the drying model has it: it grows with the thickness of the film'),
  ],
  restsOn: ['film', 'time', 'climate'],
  appliesTo: ['plan'],
  *check(plan, study) {
    for (const { upper, below, area, days, firm } of softest(study, isFast, isSlow, counts)) {
      yield {
        message: `${labelAtStart(upper.layer)} is mostly alkyd and sets fast; ${label(below.layer)} below it${on(plan, area)} is then ${figure(days)} days old and ${firmAfter(firm.likely)}. Wait longer, or lay the alkyd below and the oil above.`,
        place: upper.layer.namePlace,
        layer: upper.layer.index,
        severity: filmOf(upper) < VEIL_UM ? 'info' : 'warning',
        related: [
          {
            message: `${labelAtStart(below.layer)} is ${firmAfter(firm.likely)}`,
            place: below.layer.namePlace,
          },
        ],
        fixes: below.layer.painted || upper.layer.painted ? [] : waitLonger(below.layer, firm.likely),
      };
    }
  },
};
