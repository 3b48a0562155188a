import type { Fix, Plan } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { type FilmStudy, touching } from '../shared/beneath.ts';
import { ceiling, fall } from '../shared/falls.ts';
import { isMediumAlone, isOilFilm, spirit } from '../shared/films.ts';
import { keepsLimits, SPIRIT, VEIL_UM } from '../shared/limits.ts';
import { mostShare, shareOf, takeShare, useMedium, type Wanted } from '../shared/otherwise.ts';
import { labelAtStart, ours, percent, practice } from '../shared/words.ts';

function fixes(plan: Plan, study: Study, film: FilmStudy): Fix[] {
  const { layer } = film;
  const over = ceiling(study, film);
  const falls = fall(study, film) !== undefined;
  const sound: Wanted = (c) =>
    spirit(c) <= SPIRIT.info &&
    c.fatness.likely < over &&
    (falls || !fall(study, film, c)) &&
    keepsLimits(study, film, c);
  const less = mostShare(layer, shareOf(layer) - 1, sound);
  return [...(less === undefined ? [] : takeShare(layer, less)), ...useMedium(plan, layer, sound)];
}

/** A film this fat holds its pigment however it was thinned: an alkyd medium brings much spirit of its own. */
const WELL_BOUND = 0.4;

/** Veils on veils on the ground: so many of them are still a washing-in. */
const VEILS = 3;

/** A tone or a drawing washed in on the ground, as thin as water colour, is laid so. */
function isFirstVeil(study: Study, film: FilmStudy, veils = VEILS): boolean {
  if (film.composition.dryFilm.likely >= VEIL_UM) return false;
  return touching(study, film).every(
    ({ below }) =>
      ['ground', 'size', 'imprimatura'].includes(below.layer.kind) ||
      (veils > 1 && isOilFilm(below) && isFirstVeil(study, below, veils - 1)),
  );
}

/** Paint thinned until there is hardly a film in it. */
export const tooMuchSolvent: Rule = {
  id: 'too-much-solvent',
  title: 'Thinned with too much spirit',
  theme: 'fat-and-lean',
  severity: 'warning',
  why: 'Spirit carries the little binder of a thin wash down into the ground and leaves the pigment lying loose; on paint that is not firm it bites into what lies below. All of it ends in the air.',
  whatToDo: 'Thin less and spread thinner with brush and rag, or take a medium that holds more oil or alkyd.',
  sources: [
    practice('paint thinned to the strength of ink dries weak and matt'),
    ours(
      'more than half of the applied volume spirit is told, more than 65 % warned of; a first veil under 10 µm, and a film of fatness 40 % and more, may hold up to 65 %',
    ),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (!isOilFilm(l) || l.layer.kind === 'varnish' || l.layer.kind === 'size' || isMediumAlone(l.layer))
      return;
    const share = spirit(l.composition);
    if (share <= SPIRIT.info + 1e-9) return;
    const much = share > SPIRIT.warning + 1e-9;
    const study = others();
    if (!much && (l.composition.fatness.likely >= WELL_BOUND || isFirstVeil(study, l))) return;
    yield {
      message: `${labelAtStart(l.layer)} is ${percent(share)} spirit as it is laid: little binder is left to hold the pigment, and less where the ground drinks. Thin it less, or with a medium that holds more oil or alkyd.`,
      place: l.layer.medium?.place ?? l.layer.namePlace,
      layer: l.layer.index,
      severity: much ? 'warning' : 'info',
      fixes: fixes(study.plan, study, l),
    };
  },
};
