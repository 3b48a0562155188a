import type { Layer } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import type { Rule } from './rule.ts';
import { modellingKept, stackOn } from './seen.ts';
import { Called, figure, listed, ours, practice, quoted } from './words.ts';

/** Below this share of a step beneath the modelling of an underlayer no longer carries. */
const CARRIES = 0.15;

/** Runs of glazes with nothing but glazes in them, on one area, that lie on painted layers. */
function runs(study: Study, area: string): Layer[][] {
  const found: Layer[][] = [];
  let run: Layer[] = [];
  let painted = false;
  for (const index of stackOn(study, area)) {
    const layer = study.plan.layers[index];
    if (!layer) continue;
    if (layer.kind === 'glaze') {
      if (painted) run.push(layer);
      continue;
    }
    if (layer.kind === 'varnish') continue;
    if (run.length > 0) found.push(run);
    run = [];
    painted = layer.kind === 'underlayer' || layer.kind === 'layer' || layer.kind === 'scumble';
  }
  if (run.length > 0) found.push(run);
  return found;
}

/** Glazes, alone or one on another, that let nothing of what lies beneath through. */
export const glazeHides: Rule = {
  id: 'glaze-hides',
  title: 'Glaze that covers what lies beneath',
  severity: 'info',
  why: 'Underlayers carry light and shade; glazes colour them. Where the films together are so dense that a step of light and dark beneath no longer shows, the underlayer was painted for nothing.',
  whatToDo: 'Lay them thinner or with more medium, take fewer coats, or choose more transparent colours.',
  sources: [
    practice('a glaze lets the underlayer speak'),
    ours('15 % of a step in L* beneath as the least that carries'),
  ],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
    const by = new Map<number, { readonly areas: string[]; share: number; film: number; count: number }>();
    for (const area of study.areas)
      for (const run of runs(study, area.name)) {
        // the layer with which the modelling is lost, and what had been laid until then
        for (let n = 1; n <= run.length; n++) {
          const films = run.slice(0, n);
          const kept = modellingKept(study, area.name, films);
          if (!kept || kept.share >= CARRIES) continue;
          const last = films[n - 1] as Layer;
          const film = films.reduce((s, l) => s + (study.layers[l.index]?.dryFilm?.likely ?? 0), 0);
          const known = by.get(last.index) ?? { areas: [], share: 1, film: 0, count: n };
          known.areas.push(area.name);
          if (kept.share < known.share) Object.assign(known, { share: kept.share, film, count: n });
          by.set(last.index, known);
          break;
        }
      }
    for (const [index, { areas, share, film, count }] of by) {
      const layer = plan.layers[index] as Layer;
      const where = plan.implicitArea ? '' : ` on ${listed(areas.slice(0, 4).map(quoted))}`;
      yield {
        message: `${Called(layer)} covers${where} rather than colours: of a step of light and dark beneath, ${Math.round(share * 100)} % still shows through ${count > 1 ? `the ${count} glazes there (${figure(film)} µm together)` : `its ${figure(film)} µm`}. Lay it thinner or with more medium if the underlayer is to carry the picture.`,
        place: layer.namePlace,
        layer: index,
      };
    }
  },
};
