import { RESIDUE } from '../../film/residue.ts';
import type { Rule } from '../rule.ts';
import { filmOf } from '../shared/beneath.ts';
import { coveredBy } from '../shared/films.ts';
import { takeOut } from '../shared/fixes.ts';
import { bareOilBeneath, isBareOil, oiledCoatsBeneath, oilOuts, residueOf } from '../shared/oil-between.ts';
import { figure, label, labelAtStart, ours, practice } from '../shared/words.ts';

/** µm of oil that may lie between two layers, as much as a cloth leaves; more slides and yellows. */
const BREATH_UM = RESIDUE.high;
/** Coats with an oiling out before each that add up to a film. */
const MANY = 4;

const ENOUGH = 'Once, rubbed off to a sheen, is enough.';

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
    ours('told from 3 µm of bare oil, two oilings one on the other or four coats in a row'),
    RESIDUE.source,
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    const { layer } = l;
    const times = oilOuts(layer);
    const first = times[0];
    const bare = isBareOil(l);
    if (!first && !bare) return;
    const study = others();
    const { plan } = study;
    const about = { layer: layer.index };
    const beneath = bareOilBeneath(study, l);
    const [under] = beneath;
    const deep = beneath.reduce((um, b) => um + filmOf(b), 0);
    const again = times[1];
    if (again)
      yield {
        ...about,
        place: again.place,
        message: `${labelAtStart(layer)} is oiled out ${times.length} times over: about ${figure(residueOf(times))} µm of oil stay between the layers. ${ENOUGH}`,
        fixes: [takeOut('Oil out once', plan, again.place)],
      };
    else if (under && (first || bare))
      yield {
        ...about,
        place: first?.place ?? layer.namePlace,
        message: `${labelAtStart(layer)} ${first ? 'is oiled out over' : 'is bare medium on'} the bare medium of ${label(under.layer)}: about ${figure(deep + (first ? residueOf(times) : filmOf(l)))} µm of oil between the layers. ${ENOUGH}`,
        related: [
          { message: `${labelAtStart(under.layer)} is medium without colour`, place: under.layer.namePlace },
        ],
        fixes: first ? [takeOut('Leave the oil out', plan, first.place)] : [],
      };
    else if (first) {
      const before = l.coats >= MANY ? 0 : oiledCoatsBeneath(study, l, MANY);
      const coats = before + l.coats;
      // told where the row grows too long, and not of every coat on it
      if (coats >= MANY && before < MANY)
        yield {
          ...about,
          place: first.place,
          severity: 'info',
          message:
            before > 0
              ? `With ${label(layer)} ${coats} coats in a row lie on an oiling out each: together about ${figure(coats * residueOf([first]))} µm of oil. Rub lightly between coats instead.`
              : `${labelAtStart(layer)} is oiled out before each of its ${l.coats} coats: together about ${figure(coats * residueOf([first]))} µm of oil. Rub lightly between coats instead.`,
        };
    }
    if (bare && filmOf(l) > BREATH_UM + 1e-9 && coveredBy(study, layer))
      yield {
        ...about,
        place: layer.film?.place ?? layer.namePlace,
        message: `${labelAtStart(layer)} is ${figure(filmOf(l))} µm of medium without colour between the layers, more than a breath (${BREATH_UM} µm): it stays slippery and yellows. Rub it off to a sheen.`,
      };
  },
};
