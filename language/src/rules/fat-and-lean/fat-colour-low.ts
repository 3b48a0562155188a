import type { Pigment } from '../../materials/types.ts';
import type { Rule } from '../rule.ts';
import { filmOf, isCovered, shareOfPigment } from '../shared/beneath.ts';
import { isOilFilm } from '../shared/films.ts';
import { pigmentName, pigmentPlace } from '../shared/pigments.ts';
import { figure, labelAtStart, practice } from '../shared/words.ts';

/** g of oil per 100 g of pigment, in the middle of its range, and more: a colour that drinks oil. */
const HUNGRY = 60;
/** Share of the pigment by volume, and µm of film, from which it matters. */
const SHARE = 0.7;
const THICK_UM = 25;
/** Share of medium up to which a colour counts as neat. */
const NEAT = 0.1;

const middle = ({ oilAbsorption: { low, high } }: Pigment): number => (low + high) / 2;
const isHungry = (p: Pigment): boolean => middle(p) >= HUNGRY;

/** A colour of high oil demand, neat and thick, with other layers on it. */
export const fatColourLow: Rule = {
  id: 'fat-colour-low',
  title: 'Oil-hungry colour neat and thick low down',
  theme: 'fat-and-lean',
  severity: 'info',
  why: 'Umbers, lakes and blacks need much oil to become paint. Neat and thick they make an oily film that goes on moving under everything above it.',
  whatToDo:
    'Keep it thin low down, let it down with spirit, or mix it with a white or an ochre that needs less oil.',
  sources: [
    practice('earths and lakes of high oil demand are kept for thin or late layers'),
    {
      text: 'Church 1915 and Gettens & Stout 1942 for the oil the pigments take, where their entries say so',
      mark: 'published',
    },
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (!isOilFilm(l) || !['ground', 'imprimatura', 'underlayer', 'layer'].includes(l.layer.kind)) return;
    if (filmOf(l) < THICK_UM || l.composition.mediumShare.likely > NEAT) return;
    if (shareOfPigment(l.composition, isHungry) < SHARE || !isCovered(others(), l.layer)) return;
    const most = l.composition.pigments
      .filter((p) => isHungry(p.pigment))
      .sort((a, b) => b.volumeFraction.likely - a.volumeFraction.likely)[0]?.pigment;
    if (!most) return;
    const { low, high } = most.oilAbsorption;
    yield {
      message: `${labelAtStart(l.layer)} is mostly ${pigmentName(most)}, which takes ${figure(low)} to ${figure(high)} g of oil per 100 g, neat, ${figure(filmOf(l))} µm thick and with layers on it: an oily film that moves for long. Keep it thinner, or let it down.`,
      place: pigmentPlace(l.layer, (p) => p === most),
      layer: l.layer.index,
      objection: { pigment: most, otherwise: (p) => !isHungry(p) },
    };
  },
};
