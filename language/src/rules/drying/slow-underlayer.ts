import type { Pigment } from '../../materials/types.ts';
import type { Rule } from '../rule.ts';
import { filmOf, isCovered, shareOfPigment } from '../shared/beneath.ts';
import { isMostlyAlkyd, isOilFilm } from '../shared/films.ts';
import { mainly } from '../shared/instead.ts';
import { pigmentName, pigmentPlace } from '../shared/pigments.ts';
import {
  figure,
  firmAfter,
  labelAtStart,
  listed,
  ours,
  percent,
  practice,
  published,
} from '../shared/words.ts';

/** µm from which a slow colour low down matters, and from which even a merely slow one is a warning. */
const FILM = { info: 25, warning: 40 };
const SHARE = { slow: 0.5, verySlow: 0.25 };

const isWhite = (p: Pigment): boolean => p.code?.startsWith('PW') === true;
const isSlow = (p: Pigment): boolean =>
  !isWhite(p) && (p.drying.value === 'retarder' || p.drying.value === 'strong retarder');
const isVerySlow = (p: Pigment): boolean => p.drying.value === 'strong retarder';

/** A colour that holds back its oil, thick and with layers on it. */
export const slowUnderlayer: Rule = {
  id: 'slow-underlayer',
  title: 'Slow-drying colour thick and low down',
  theme: 'drying',
  severity: 'warning',
  why: 'Carbon blacks, lakes and cadmiums hold back their oil. Thick under other layers such a film stays soft for months, and what lies on it cracks.',
  whatToDo:
    'Keep it thin, mix it with an earth or another quick colour, bind it with alkyd, or keep it for the last layers.',
  sources: [
    published('Saitzyk, Art Hardware (1987, rev. 1998), Drying Rates, for the slow colours'),
    published(
      'Toch, Materials for Permanent Painting (1911): lamp black and graphite may stay soft below for a year',
    ),
    practice('slow colours on top'),
    ours('told from 25 µm where half of the pigment is slow, a quarter very slow'),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (!isOilFilm(l) || isMostlyAlkyd(l.composition) || l.layer.kind === 'varnish') return;
    const film = filmOf(l);
    if (film < FILM.info) return;
    const slow = shareOfPigment(l.composition, isSlow);
    const very = shareOfPigment(l.composition, isVerySlow);
    if ((slow < SHARE.slow && very < SHARE.verySlow) || !isCovered(others(), l.layer)) return;
    const which = l.composition.pigments.map((p) => p.pigment).filter(isSlow);
    const firm = l.drying ? ` At the slowest it is ${firmAfter(l.drying.firm.high)}.` : '';
    yield {
      message: `${labelAtStart(l.layer)} holds ${listed(which.map(pigmentName))}, ${percent(slow)} of its pigment by volume. Such colours hold back their oil: ${figure(film)} µm thick and with layers on it, it stays soft below.${firm} Keep it thin, or for later layers.`,
      place: pigmentPlace(l.layer, isSlow),
      layer: l.layer.index,
      objection: mainly(l.composition, isSlow),
      severity: very >= SHARE.verySlow || film >= FILM.warning ? 'warning' : 'info',
    };
  },
};
