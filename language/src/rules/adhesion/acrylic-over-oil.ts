import { binder } from '../../materials/catalogue.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { isFilm } from '../shared/beneath.ts';
import { binderShare, isOily, on } from '../shared/films.ts';
import { label, labelAtStart, practice } from '../shared/words.ts';

/** What water-borne stuff a layer is of; undefined for oil, resin and what is not known. */
function waterOf(l: LayerStudy): 'acrylic' | 'glue' | undefined {
  const { material, resin } = l.layer;
  if (material?.is) {
    const { kind, id } = material.is;
    if (kind === 'acrylic') return 'acrylic';
    return kind === 'glue' || id === 'gouache' || id === 'watercolour' ? 'glue' : undefined;
  }
  if (resin?.is) return binder(resin.is.id)?.kind === 'acrylic' ? 'acrylic' : undefined;
  if (!isFilm(l)) return undefined;
  if (binderShare(l.composition, (kind) => kind === 'acrylic') > 0.5) return 'acrylic';
  return binderShare(l.composition, (kind) => kind === 'protein' || kind === 'gum') > 0.5
    ? 'glue'
    : undefined;
}

function oilBelow(study: Study, l: LayerStudy): { below: LayerStudy; area: string } | undefined {
  for (const [area, indices] of l.below)
    for (const i of indices) {
      const below = study.layers[i];
      if (below && isOily(below)) return { below, area };
    }
  return undefined;
}

/** A water-borne film over oil. */
export const acrylicOverOil: Rule = {
  id: 'acrylic-over-oil',
  title: 'Acrylic over oil',
  theme: 'adhesion',
  severity: 'error',
  why: 'An acrylic film finds no hold on oil and peels off in sheets; the oil below goes on moving, and the water-borne film cannot follow. Glue colours do the same sooner.',
  whatToDo:
    'Put acrylic and glue below and oil above, never the other way; paint this layer in oil or alkyd.',
  sources: [practice('oil over acrylic, never acrylic over oil')],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    const water = waterOf(l);
    if (!water) return;
    const study = others();
    const oil = oilBelow(study, l);
    if (!oil) return;
    yield {
      message: `${labelAtStart(l.layer)} is ${water === 'acrylic' ? 'acrylic' : 'bound in water'} and lies over oil: ${label(oil.below.layer)}${on(study.plan, oil.area)}. It will not hold and peels. Lay it below the oil, or paint it in oil or alkyd.`,
      place: l.layer.material?.place ?? l.layer.resin?.place ?? l.layer.namePlace,
      layer: l.layer.index,
      severity: water === 'acrylic' ? 'error' : 'warning',
      related: [{ message: `${labelAtStart(oil.below.layer)} is oil`, place: oil.below.layer.namePlace }],
    };
  },
};
