import type { LayerKind } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { figure, labelAtStart, memory, ours } from '../shared/words.ts';

interface Most {
  /** µm of one coat up to which a layer is what it is called */
  readonly film: number;
  /** µm of all its coats; what works by hardly being there has no more in coats than in one */
  readonly all: number;
  /** what it is beyond that */
  readonly beyond?: LayerKind;
}

const MOST: Partial<Record<LayerKind, Most>> = {
  size: { film: 30, all: 30 },
  drawing: { film: 60, all: 60 },
  imprimatura: { film: 30, all: 30, beyond: 'underlayer' },
  underlayer: { film: 150, all: 600, beyond: 'layer' },
  glaze: { film: 30, all: 120, beyond: 'layer' },
  scumble: { film: 60, all: 120, beyond: 'layer' },
  leaf: { film: 10, all: 10 },
  varnish: { film: 80, all: 80 },
};

const a = (kind: LayerKind): string => `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;

/** A film too thick to be what it is called. */
export const filmTooThickForKind: Rule = {
  id: 'film-too-thick-for-kind',
  title: 'Too thick for what it is called',
  theme: 'drying',
  severity: 'warning',
  why: 'A glaze works by being thin, an imprimatura by letting the ground shine, a varnish by hardly being there. Too thick it does something else, and dries otherwise.',
  whatToDo: 'Lay it thinner or in several coats, or call it what it is.',
  sources: [
    memory(
      'cross-section literature as remembered: glazes 5 to 30 µm, brushed opaque paint 15 to 60 µm, varnishes some tens of µm',
    ),
    ours(
      'the limits of the other kinds; 120 µm for all coats of a glaze or a scumble, 600 µm for those of an underlayer',
    ),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer({ layer, coats }) {
    const most = MOST[layer.kind];
    const film = layer.film;
    if (!most || !film || film.given === 'unknown') return;
    const coat = film.value.likely;
    const all = coat * coats;
    const thick = coat > most.film + 1e-9;
    // beyond belief is another rule's: a slip of the unit
    if ((!thick && !(all > most.all + 1e-9)) || coat > 2000) return;
    const sum = coats > 1 ? `, ${figure(all)} µm in its ${coats} coats` : '';
    const limit = thick ? `${most.film} µm a coat` : `${most.all} µm in all`;
    yield {
      message: `${labelAtStart(layer)} has a film of ${figure(coat)} µm a coat${sum}: more than the ${limit} up to which it works as ${a(layer.kind)}. Lay it thinner${coats > 1 ? ', or in fewer coats' : ''}${most.beyond ? `, or call it ${a(most.beyond)}` : ''}.`,
      place: thick ? film.place : (layer.coats?.place ?? film.place),
      layer: layer.index,
      // a film built up in coats that are thin enough each dries soundly
      severity: thick || most.all === most.film ? 'warning' : 'info',
      fixes: most.beyond ? [replace(`Call it ${a(most.beyond)}`, layer.kindPlace, most.beyond)] : [],
    };
  },
};
