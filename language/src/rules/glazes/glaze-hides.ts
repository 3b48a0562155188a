import type { Layer } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { beneathOf, modelling, stackOn } from '../shared/seen.ts';
import { figure, labelAtStart, listed, ours, practice, quoted } from '../shared/words.ts';

/** Below this share of a step beneath the modelling of an underlayer no longer carries. */
const CARRIES = 0.15;

/** Runs of glazes with nothing but glazes in them, on one area, that lie on painted layers. */
function runs(study: Study, area: string): Layer[][] {
  const runs: Layer[][] = [];
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
    if (run.length > 0) runs.push(run);
    run = [];
    painted = layer.kind === 'underlayer' || layer.kind === 'layer' || layer.kind === 'scumble';
  }
  if (run.length > 0) runs.push(run);
  return runs;
}

interface Lost {
  readonly layer: Layer;
  /** of the run */
  readonly first: Layer;
  readonly areas: readonly string[];
  readonly share: number;
  /** µm of all glazes laid until then */
  readonly film: number;
  readonly count: number;
}

/** The layer of a run with which the modelling beneath is lost. */
function loss(study: Study, area: string, run: readonly Layer[]): Lost | undefined {
  const beneath = run[0] && modelling(study, area, run[0]);
  let film = 0;
  for (const [i, layer] of run.entries()) {
    film += study.layers[layer.index]?.dryFilm?.likely ?? 0;
    beneath?.lay(layer);
    const share = beneath?.kept();
    if (share !== undefined && share < CARRIES)
      return { layer, first: run[0] ?? layer, areas: [area], share, film, count: i + 1 };
  }
  return undefined;
}

/** Glazes, alone or one on another, that let nothing of what lies beneath through. */
export const glazeHides: Rule = {
  id: 'glaze-hides',
  title: 'Glaze that covers what lies beneath',
  theme: 'glazes',
  severity: 'info',
  why: 'Underlayers carry light and shade; glazes colour them. Where the films together are so dense that a step of light and dark beneath no longer shows, the underlayer was painted for nothing.',
  whatToDo: 'Lay them thinner or with more medium, take fewer coats, or choose more transparent colours.',
  sources: [
    practice('a glaze lets the underlayer speak'),
    ours('15 % of a step in L* beneath as the least that carries'),
  ],
  restsOn: ['film', 'films beneath'],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
    const by = new Map<number, Lost>();
    for (const area of study.areas)
      for (const run of runs(study, area.name)) {
        const lost = loss(study, area.name, run);
        if (!lost) continue;
        const known = by.get(lost.layer.index);
        const areas = [...(known?.areas ?? []), area.name];
        by.set(lost.layer.index, { ...(known && known.share < lost.share ? known : lost), areas });
      }
    for (const { layer, first, areas, share, film, count } of by.values()) {
      const where = plan.implicitArea ? '' : ` on ${listed(areas.slice(0, 4).map(quoted))}`;
      yield {
        message: `${labelAtStart(layer)} covers${where} rather than colours: of a step of light and dark beneath, ${Math.round(share * 100)} % still shows through ${count > 1 ? `the ${count} glazes there (${figure(film)} µm together)` : `its ${figure(film)} µm`}. Lay it thinner or with more medium if the underlayer is to carry the picture.`,
        place: layer.namePlace,
        layer: layer.index,
        related: [
          ...(first === layer
            ? []
            : [{ message: `the first of these glazes, ${quoted(first.name)}`, place: first.namePlace }]),
          ...beneathOf(study, first.index, areas[0] ?? ''),
        ],
      };
    }
  },
};
