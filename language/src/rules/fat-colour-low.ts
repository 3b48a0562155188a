import { filmOf, isCovered, isFilm } from './beneath.ts';
import type { Rule } from './rule.ts';
import { Called, figure, practice, quoted } from './words.ts';

/** g oil per 100 g and more: a colour that drinks oil. */
const HUNGRY = 60;

/** A colour of high oil demand, neat and thick, with other layers on it. */
export const fatColourLow: Rule = {
  id: 'fat-colour-low',
  title: 'Oil-hungry colour neat and thick low down',
  severity: 'info',
  why: 'Umbers, siennas, lakes and blacks need much oil to become paint. Neat and thick they make an oily film that goes on moving under everything above it.',
  whatToDo: 'Keep it thin low down, let it down with spirit, or mix it with a white or an ochre that needs less oil.',
  sources: [practice('earths and lakes of high oil demand are kept for thin or late layers'), { text: 'Church 1915 and Gettens & Stout 1942 for the oil the pigments take', mark: 'published' }],
  appliesTo: ['plan'],
  *check(_plan, study) {
    for (const l of study.layers) {
      if (!isFilm(l) || filmOf(l) < 25 || !['ground', 'imprimatura', 'underlayer', 'layer'].includes(l.layer.kind)) continue;
      if (!isCovered(study, l.layer)) continue;
      const hungry = l.composition.pigments.filter((p) => (p.pigment.oilAbsorption.low + p.pigment.oilAbsorption.high) / 2 >= HUNGRY);
      const mass = hungry.reduce((s, p) => s + p.massFraction.likely, 0);
      const all = l.composition.pigments.reduce((s, p) => s + p.massFraction.likely, 0);
      const most = hungry.sort((a, b) => b.massFraction.likely - a.massFraction.likely)[0];
      if (!most || mass / all < 0.7) continue;
      const { low, high } = most.pigment.oilAbsorption;
      yield {
        message: `${Called(l.layer)} is mostly ${quoted(most.pigment.id)}, which takes ${figure(low)}–${figure(high)} g of oil per 100 g, ${figure(filmOf(l))} µm thick and with layers on it. Keep it thinner, or let it down.`,
        place: l.layer.namePlace,
        layer: l.layer.index,
      };
    }
  },
};
