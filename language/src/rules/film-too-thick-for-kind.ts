import type { LayerKind } from '../plan/plan.ts';
import { replace } from './fixes.ts';
import type { Rule } from './rule.ts';
import { Called, figure, memory, ours } from './words.ts';

/** µm of one coat up to which a layer is what it is called, and what it is beyond that. */
const MOST: Partial<Record<LayerKind, { readonly film: number; readonly beyond?: LayerKind }>> = {
  size: { film: 30 },
  drawing: { film: 60 },
  imprimatura: { film: 30, beyond: 'underlayer' },
  underlayer: { film: 150, beyond: 'layer' },
  glaze: { film: 30, beyond: 'layer' },
  scumble: { film: 60, beyond: 'layer' },
  leaf: { film: 10 },
  varnish: { film: 80 },
};

/** A film too thick to be what it is called. */
export const filmTooThickForKind: Rule = {
  id: 'film-too-thick-for-kind',
  title: 'Too thick for what it is called',
  severity: 'warning',
  why: 'A glaze works by being thin, an imprimatura by letting the ground shine, a varnish by hardly being there. Too thick it does something else, and dries otherwise.',
  whatToDo: 'Lay it thinner or in several coats, or call it what it is.',
  sources: [
    memory(
      'cross-section literature as remembered: glazes 5 to 30 µm, brushed opaque paint 15 to 60 µm, varnishes some tens of µm',
    ),
    ours('the limits of the other kinds'),
  ],
  appliesTo: ['plan'],
  *check(_plan, study) {
    for (const { layer } of study.layers) {
      const most = MOST[layer.kind];
      const film = layer.film;
      if (!most || !film || film.given === 'unknown' || !(film.value.likely > most.film + 1e-9)) continue;
      // beyond belief is another rule's: a slip of the unit
      if (film.value.likely > 2000) continue;
      yield {
        message: `${Called(layer)} has a film of ${figure(film.value.likely)} µm a coat, more than the ${most.film} µm up to which it works as ${/^[aeiou]/.test(layer.kind) ? 'an' : 'a'} ${layer.kind}. Lay it thinner${most.beyond ? `, or call it ${/^[aeiou]/.test(most.beyond) ? 'an' : 'a'} ${most.beyond}` : ''}.`,
        place: film.place,
        layer: layer.index,
        fixes: most.beyond
          ? [
              replace(
                `Call it ${/^[aeiou]/.test(most.beyond) ? 'an' : 'a'} ${most.beyond}`,
                layer.kindPlace,
                most.beyond,
              ),
            ]
          : [],
      };
    }
  },
};
