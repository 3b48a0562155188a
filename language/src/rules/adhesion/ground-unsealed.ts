import type { Rule } from '../rule.ts';
import { filmOf, touching } from '../shared/beneath.ts';
import { isOilFilm, on } from '../shared/films.ts';
import { layerAbove } from '../shared/fixes.ts';
import { label, labelAtStart, practice } from '../shared/words.ts';

/** µm up to which a first oil film is a seal itself, as an imprimatura or a thin drawing in colour is. */
const SEAL_UM = 12;

/** The first oil layer on a ground that drinks. */
export const groundUnsealed: Rule = {
  id: 'ground-unsealed',
  title: 'Absorbent ground not sealed',
  theme: 'adhesion',
  severity: 'warning',
  why: 'A chalk or plaster ground drinks the oil out of the first layer, which is left matt, spotty and weak. A thin size, a thin imprimatura or a breath of oil closes it.',
  whatToDo: 'Seal it with thin glue size or shellac, or let a thin imprimatura in oil or alkyd do it.',
  sources: [
    practice('chalk grounds are isolated with size, shellac or a thin imprimatura before body colour'),
  ],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(upper, others) {
    const { layer } = upper;
    if (!isOilFilm(upper) || layer.kind === 'size' || layer.kind === 'varnish') return;
    // a ground in oil is meant to sink in, a wash is the seal itself, and an oiling out has filled the pores
    if (layer.kind === 'ground' || layer.kind === 'imprimatura' || filmOf(upper) <= SEAL_UM) return;
    if (layer.prepare.some((p) => p.method === 'oil-out')) return;
    const study = others();
    const { plan } = study;
    for (const { below, area } of touching(study, upper)) {
      const ground = below.layer.kind === 'ground' ? below.layer.material?.is : undefined;
      // acrylic grounds are absorbent just so far that oil grips
      if (!ground?.absorbent || ground.kind === 'acrylic') continue;
      yield {
        message: `${labelAtStart(layer)} is the first oil on ${label(below.layer)}${on(plan, area)}, which is absorbent: the oil sinks away and leaves it matt and weak. Seal the ground first.`,
        place: layer.namePlace,
        layer: layer.index,
        severity: ground.kind === 'glue' || ground.id.endsWith('plaster') ? 'warning' : 'info',
        related: [{ message: `${labelAtStart(below.layer)} is absorbent`, place: below.layer.namePlace }],
        fixes: [layerAbove(plan, 'Seal the ground with glue size', below.layer, 'size', 'seal', 'glue')],
      };
      break;
    }
  },
};
