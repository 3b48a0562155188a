import type { Preparation } from '../../plan/plan.ts';
import { PREPARATION, PREPARATION_SOURCE } from '../../studio/settings.ts';
import type { Rule } from '../rule.ts';
import { filmOf } from '../shared/beneath.ts';
import { coveredBy, isMediumAlone, isOilFilm } from '../shared/films.ts';
import { figure, labelAtStart, ours, practice } from '../shared/words.ts';

/** µm of oil that may lie between two layers; more slides and yellows. */
const BREATH_UM = 6;
/** Coats with an oiling out before each that add up to a film. */
const MANY = 4;

const isOilOut = (p: Preparation): boolean => p.method === 'oil-out';

/** More oil between the layers than a breath. */
export const oilOutExcess: Rule = {
  id: 'oil-out-excess',
  title: 'Oiled out too richly',
  theme: 'adhesion',
  severity: 'warning',
  why: 'Oil rubbed out to a breath lets the next layer take hold. A film of bare oil stays slippery, wrinkles and turns yellow, and the layers slide on it.',
  whatToDo:
    'Oil out once, rub it off with a dry cloth until only a sheen is left; between many coats, rub lightly instead.',
  sources: [
    practice('oil out, then wipe off all that the cloth will take'),
    ours('told from 6 µm of bare oil or four oilings'),
    PREPARATION_SOURCE,
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    const { layer } = l;
    const times = layer.prepare.filter(isOilOut);
    const again = times[1];
    const about = { layer: layer.index };
    if (again)
      yield {
        ...about,
        place: again.place,
        message: `${labelAtStart(layer)} is oiled out ${times.length} times over: about ${figure(times.length * PREPARATION['oil-out'].likely)} µm of bare oil between the layers. Once, rubbed off to a sheen, is enough.`,
      };
    else if (times[0] && l.coats >= MANY)
      yield {
        ...about,
        place: times[0].place,
        severity: 'info',
        message: `${labelAtStart(layer)} is oiled out before each of its ${l.coats} coats: together about ${figure(l.coats * PREPARATION['oil-out'].likely)} µm of bare oil. Rub lightly between coats instead, or rub the oil off to a sheen.`,
      };
    if (isMediumAlone(layer) && layer.kind !== 'varnish' && layer.kind !== 'size' && isOilFilm(l)) {
      const film = filmOf(l);
      if (film > BREATH_UM + 1e-9 && coveredBy(others(), layer))
        yield {
          ...about,
          place: layer.film?.place ?? layer.namePlace,
          message: `${labelAtStart(layer)} is ${figure(film)} µm of medium without colour between the layers, more than a breath (${BREATH_UM} µm): it stays slippery and yellows. Rub it off to a sheen.`,
        };
    }
  },
};
