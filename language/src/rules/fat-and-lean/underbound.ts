import { exactly } from '../../materials/interval.ts';
import type { Fix, Layer, Plan } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import { compositionOf } from '../../study/what-if.ts';
import type { Rule } from '../rule.ts';
import type { FilmStudy } from '../shared/beneath.ts';
import { ceiling } from '../shared/falls.ts';
import { isOilFilm } from '../shared/films.ts';
import { replace } from '../shared/fixes.ts';
import { keepsLimits } from '../shared/limits.ts';
import {
  addMedium,
  changeMedium,
  leastShare,
  shareOf,
  takeShare,
  useMedium,
  type Wanted,
} from '../shared/otherwise.ts';
import { labelAtStart, percent, practice } from '../shared/words.ts';

/** More medium than this in body colour would make another layer of it. */
const MOST = 50;

/** Per cent of oil by mass beyond which a paste is soup. */
const SOUP = 60;

/** More oil in a paint that states too little of it, where no other layer would be changed by that. */
function moreOil(plan: Plan, { layer }: FilmStudy): Fix[] {
  const formula = layer.colour?.kind === 'formula' ? layer.colour.formula : undefined;
  for (const part of formula?.parts ?? []) {
    const { is } = part.ingredient;
    if (!formula || is.kind !== 'paint' || is.paint.oil?.given !== 'exact') continue;
    const { oil, name, place } = is.paint;
    const used = plan.names.filter((r) => r.kind === 'paint' && r.name === name).length;
    if (place.uri !== plan.uri || used > 1) continue;
    const enough = (percent: number): boolean => {
      const paint = { ...is.paint, oil: { ...oil, value: exactly(percent / 100) } };
      const richer = { ...part, ingredient: { ...part.ingredient, is: { kind: 'paint' as const, paint } } };
      const parts = formula.parts.map((p) => (p === part ? richer : p));
      const changed: Layer = { ...layer, colour: { kind: 'formula', formula: { ...formula, parts } } };
      return (compositionOf(changed)?.lambda.likely ?? 2) <= 1;
    };
    for (let percent = Math.floor(oil.value.likely * 100) + 1; percent <= SOUP; percent++)
      if (enough(percent)) return [replace(`Grind ${name} with ${percent} % oil`, oil.place, `${percent} %`)];
  }
  return [];
}

function fixes(plan: Plan, study: Study, film: FilmStudy): Fix[] {
  const { layer } = film;
  const over = ceiling(study, film);
  const bound: Wanted = (c) => c.lambda.likely <= 1 && c.fatness.likely < over && keepsLimits(study, film, c);
  const least = layer.medium && leastShare(layer, shareOf(layer) + 1, MOST, bound);
  return [
    ...moreOil(plan, film),
    ...(least === undefined ? [] : takeShare(layer, least)),
    ...useMedium(plan, layer, bound),
    ...changeMedium(plan, layer, (least ?? MOST + 1) - 1, bound),
    ...addMedium(plan, layer, MOST, bound),
  ];
}

/** Less binder than the pigments need. Films bound in water are meant to be so, and are left alone. */
export const underbound: Rule = {
  id: 'underbound',
  title: 'Too little binder',
  theme: 'fat-and-lean',
  severity: 'warning',
  why: 'Below the critical amount of binder the pigment is no longer held: the film is chalky, matt and porous, and what is painted over it sinks in.',
  whatToDo: 'Grind the paint with more oil, or take a medium that brings oil or alkyd with it.',
  sources: [
    {
      text: 'Asbeck & Van Loo, Ind. Eng. Chem. 41 (1949) 1470: critical pigment volume concentration (record seen, paper not read), from ASTM D281 oil absorption',
      mark: 'second-hand',
    },
    practice('an underbound film chalks and drinks the oil of the next'),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (!isOilFilm(l)) return;
    const { lambda, pvc, cpvc } = l.composition;
    if (lambda.likely <= 1) return;
    const sure = lambda.low > 1;
    const study = others();
    yield {
      message: `${labelAtStart(l.layer)} has ${percent(pvc.likely, 1)} of pigment in its film, where its binder can hold ${percent(cpvc.likely, 1)}: it ${sure ? 'dries' : 'may dry'} chalky and porous. Give it more oil.`,
      place: l.layer.namePlace,
      layer: l.layer.index,
      severity: sure ? 'error' : 'warning',
      fixes: fixes(study.plan, study, l),
    };
  },
};
