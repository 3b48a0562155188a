import { compositionOf } from '../study/what-if.ts';
import { isFilm } from './beneath.ts';
import { replace } from './fixes.ts';
import type { Rule } from './rule.ts';
import { Called, percent, practice } from './words.ts';

/** Less binder than the pigments need. */
export const underbound: Rule = {
  id: 'underbound',
  title: 'Too little binder',
  severity: 'warning',
  why: 'Below the critical amount of binder the pigment is no longer held: the film is chalky, matt and porous, and what is painted over it sinks in.',
  whatToDo: 'Take a medium with less spirit and more oil or alkyd, or less of it.',
  sources: [{ text: 'Asbeck & Van Loo 1949: critical pigment volume concentration, from ASTM D281 oil absorption', mark: 'second-hand' }, practice('thinning with spirit alone')],
  appliesTo: ['plan'],
  *check(_plan, study) {
    for (const l of study.layers) {
      // a glue or chalk ground is meant to be porous, and is not made of a formula
      if (!isFilm(l)) continue;
      const { lambda, pvc, cpvc } = l.composition;
      if (lambda.likely <= 1) continue;
      const sure = lambda.low > 1;
      const share = l.layer.medium?.share;
      const half = share && { ...l.layer, medium: { ...l.layer.medium, place: share.place, share: { ...share, value: { low: share.value.low / 2, likely: share.value.likely / 2, high: share.value.high / 2 } } } };
      const better = half && compositionOf(half);
      yield {
        message: `${Called(l.layer)} has ${percent(pvc.likely)} of pigment in its film, where ${percent(cpvc.likely)} can be held: it ${sure ? 'dries' : 'may dry'} chalky and porous. Give it more binder.`,
        place: l.layer.namePlace,
        layer: l.layer.index,
        severity: sure ? 'error' : 'warning',
        fixes: share && better && better.lambda.likely <= 1 && share.given === 'exact' ? [replace('Take half as much medium', share.place, `${Math.round(share.value.likely * 50)} %`)] : [],
      };
    }
  },
};
