import type { Layer } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { type FilmStudy, filmOf } from '../shared/beneath.ts';
import { isMostlyAlkyd, isOilFilm, on } from '../shared/films.ts';
import { daysBetween, waitLonger } from '../shared/laid.ts';
import { VEIL_UM } from '../shared/limits.ts';
import { figure, label, labelAtStart, ours, practice, published } from '../shared/words.ts';

/** How many times longer the lower film takes to be touch-dry. */
const SLOWER = 2;

interface Soft {
  readonly below: FilmStudy;
  readonly area: string;
  readonly days: number;
  readonly firm: number;
}

/** A slow oil film, which an alkyd one would be laid on too soon. */
const isSlow = (l: LayerStudy): l is FilmStudy =>
  isOilFilm(l) &&
  l.drying !== undefined &&
  !isMostlyAlkyd(l.composition) &&
  l.layer.kind !== 'varnish' &&
  l.layer.kind !== 'ground';

const isFast = (l: LayerStudy): l is FilmStudy =>
  isOilFilm(l) && l.layer.kind !== 'varnish' && isMostlyAlkyd(l.composition);

/** For each alkyd film the slow one beneath it that would be least firm. Films once firm are not looked at again. */
function* softest(study: Study): Generator<Soft & { readonly upper: FilmStudy }> {
  // most plans have no alkyd film, and then nothing is kept
  if (!study.layers.some(isFast)) return;
  const soft = new Map<string, readonly FilmStudy[]>();
  for (const upper of study.layers) {
    let worst: Soft | undefined;
    for (const area of upper.areas) {
      const still = (soft.get(area) ?? []).filter((below) => left(study, below, upper.layer) > 0);
      for (const below of still) {
        const fast = upper.drying?.touchDry.likely;
        if (fast === undefined || (below.drying?.touchDry.likely ?? 0) < SLOWER * fast) continue;
        const firm = below.drying?.firm.likely ?? 0;
        const days = firm - left(study, below, upper.layer);
        if (!worst || firm - days > worst.firm - worst.days) worst = { below, area, days, firm };
      }
      soft.set(area, isSlow(upper) ? [...still, upper] : still);
    }
    if (worst && isFast(upper)) yield { ...worst, upper };
  }
}

/** Days a film still lacks to be firm when another is laid. */
function left(study: Study, below: FilmStudy, upper: Layer): number {
  const days = daysBetween(study, below.layer, upper);
  const lacking = days === undefined ? 0 : (below.drying?.firm.likely ?? 0) - days;
  return lacking > 1e-6 ? lacking : 0;
}

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
    for (const { upper, below, area, days, firm } of softest(study)) {
      yield {
        message: `${labelAtStart(upper.layer)} is mostly alkyd and sets fast; ${label(below.layer)} below it${on(plan, area)} is then ${figure(days)} days old and firm after about ${figure(firm)}. Wait longer, or lay the alkyd below and the oil above.`,
        place: upper.layer.namePlace,
        layer: upper.layer.index,
        severity: filmOf(upper) < VEIL_UM ? 'info' : 'warning',
        related: [
          {
            message: `${labelAtStart(below.layer)} is firm after about ${figure(firm)} days`,
            place: below.layer.namePlace,
          },
        ],
        fixes: below.layer.painted || upper.layer.painted ? [] : waitLonger(below.layer, firm),
      };
    }
  },
};
