import type { Pigment } from '../../materials/types.ts';
import type { Rule } from '../rule.ts';
import { filmOf, shareOfPigment } from '../shared/beneath.ts';
import { coveredBy, isOilFilm } from '../shared/films.ts';
import { VEIL_UM } from '../shared/limits.ts';
import { isAsphalt, pigmentName, pigmentPlace } from '../shared/pigments.ts';
import { figure, labelAtStart, memory, percent, published } from '../shared/words.ts';

/** Share of the pigment by volume from which it matters. */
const SHARE = 0.25;

const isBrownCoal = (p: Pigment): boolean => p.code === 'NBr8';

/** A film of brown coal, or of asphalt as the last layer. */
export const brownCoalFilm: Rule = {
  id: 'brown-coal-film',
  title: 'Film of brown coal',
  theme: 'adhesion',
  severity: 'warning',
  why: 'Van Dyke brown and its kin are brown coals that hold back the oil: the film stays soft, wrinkles and cracks, and the colour fades to grey. A thin glaze fares better than body colour.',
  whatToDo:
    'Take burnt umber with a black, or a transparent iron oxide; use brown coal only as a thin last glaze, if at all.',
  sources: [
    published('Saitzyk, Art Hardware (1987, rev. 1998), Drying Rates: Van Dyke brown among the slowest'),
    memory('soft, wrinkling and cracking film'),
    published('Gettens & Stout, Painting Materials (1942) p.94, for asphaltum'),
  ],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (!isOilFilm(l)) return;
    const lastAsphalt = (p: Pigment): boolean => isAsphalt(p) && !coveredBy(others(), l.layer);
    const which = (p: Pigment): boolean => isBrownCoal(p) || lastAsphalt(p);
    const share = shareOfPigment(l.composition, which);
    if (share < SHARE - 1e-9) return;
    const pigment = l.composition.pigments.map((p) => p.pigment).find(which);
    if (!pigment) return;
    const film = filmOf(l);
    yield {
      message: `${labelAtStart(l.layer)} is ${percent(share)} ${pigmentName(pigment)} by volume of its pigment, ${figure(film)} µm thick: the film stays soft and wrinkles or cracks. Take burnt umber with a black, or a transparent iron oxide.`,
      place: pigmentPlace(l.layer, which),
      layer: l.layer.index,
      objection: { pigment, otherwise: (p) => !which(p) },
      severity: film < VEIL_UM ? 'info' : 'warning',
    };
  },
};
