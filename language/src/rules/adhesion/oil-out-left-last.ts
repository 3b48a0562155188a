import type { Rule } from '../rule.ts';
import { coveredBy } from '../shared/films.ts';
import { replace, takeOut } from '../shared/fixes.ts';
import { isBareOil, oilOuts } from '../shared/oil-between.ts';
import { labelAtStart, practice } from '../shared/words.ts';

/** Bare oil as the last thing on the picture, or under its varnish. */
export const oilOutLeftLast: Rule = {
  id: 'oil-out-left-last',
  title: 'Bare oil left as the last layer',
  theme: 'adhesion',
  severity: 'warning',
  why: 'Oil rubbed on to bring sunken darks back yellows at the very surface, takes dirt, and cannot be taken off again without harming the paint. Under a varnish it stays soft.',
  whatToDo:
    'Oil out only where you paint on the same day; bring back sunken darks with varnish when the time has come.',
  sources: [practice('no oil on a finished picture; a varnish can be taken off, oil cannot')],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    const { layer } = l;
    if (layer.kind === 'varnish') {
      const p = oilOuts(layer)[0];
      if (p)
        yield {
          message: `${labelAtStart(layer)} is laid on a fresh oiling out: the oil is shut in, stays soft and yellows. Varnish the bare dry paint.`,
          place: p.place,
          layer: layer.index,
          fixes: [
            layer.prepare.length === 1
              ? replace('Wipe off the dust only', p.place, 'prepare wipe')
              : takeOut('Leave the oil out', others().plan, p.place),
          ],
        };
    } else if (isBareOil(l)) {
      if (coveredBy(others(), layer, (u) => u.layer.kind !== 'varnish')) return;
      yield {
        message: `${labelAtStart(layer)} leaves bare medium as the last thing on the picture: it yellows at the surface and cannot be taken off again. Paint into it on the same day, or wait for the varnish.`,
        place: layer.namePlace,
        layer: layer.index,
      };
    }
  },
};
