/**
 * One slip, one finding. What rests on a figure that another rule has just called impossible would only say so again in
 * other words, so it is left out until the figure is mended.
 */
import type { Formula, Ingredient, Layer, Measure, Plan } from '../plan/plan.ts';
import type { Figure, Finding, Rule } from './rule.ts';

interface Spot {
  readonly kind: Figure;
  readonly start: number;
  readonly end: number;
  /** the declaration it stands in, or the layer; neither for the whole plan */
  readonly of?: object;
}

function* spots(plan: Plan): Generator<Spot> {
  const spot = (kind: Figure, x: Measure | Formula | undefined, of?: object): Spot[] =>
    x && x.place.uri === plan.uri ? [{ kind, start: x.place.start, end: x.place.end, of }] : [];
  const { studio, support } = plan;
  yield* spot('climate', studio.temperature);
  yield* spot('climate', studio.humidity);
  for (const x of [studio.room, studio.airChanges, studio.session]) yield* spot('air', x);
  for (const x of [support?.height, support?.width, ...plan.areas.map((a) => a.share)])
    yield* spot('surface', x);
  for (const p of plan.pigments) for (const x of [p.density, p.oilAbsorption]) yield* spot('film', x, p);
  for (const p of plan.paints) for (const x of [p.oil, p.formula]) yield* spot('film', x, p);
  for (const m of plan.mediums) yield* spot('film', m.formula, m);
  for (const m of plan.mixes) {
    yield* spot('film', m.formula, m);
    yield* spot('tolerance', m.within, m);
  }
  for (const t of plan.targets) yield* spot('tolerance', t.within);
  for (const l of plan.layers) {
    const formula = l.colour?.kind === 'formula' ? l.colour.formula : undefined;
    for (const x of [l.film, l.coats, l.medium?.share, formula]) yield* spot('film', x, l);
    for (const x of [l.wait, l.after]) yield* spot('time', x, l);
  }
}

type Is = Ingredient['is'] | NonNullable<NonNullable<Layer['medium']>['of']>['is'];

/** Whether a layer is made with one of these declarations, however deep. */
function madeWith(layer: Layer, wrong: ReadonlySet<object>): boolean {
  const opened = new Set<object>([layer]);
  const open = (is: Is): void => {
    const of =
      is?.kind === 'paint'
        ? is.paint
        : is?.kind === 'mix'
          ? is.mix
          : is?.kind === 'medium'
            ? is.medium
            : is?.kind === 'pigment'
              ? is.own
              : undefined;
    if (of) opened.add(of);
  };
  const openAll = (formula: Formula | undefined) => {
    for (const { ingredient } of formula?.parts ?? []) open(ingredient.is);
  };
  openAll(layer.colour?.kind === 'formula' ? layer.colour.formula : undefined);
  open(layer.medium?.of?.is);
  // grows as it is walked, so that no chain is too long for the stack
  for (const of of opened) {
    if (wrong.has(of)) return true;
    if ('formula' in of) openAll(of.formula as Formula | undefined);
  }
  return false;
}

/** Findings without those that follow from a figure found impossible. */
export function withoutFollowing<F extends Finding>(
  plan: Plan,
  found: readonly F[],
  ruleById: ReadonlyMap<string, Rule>,
): readonly F[] {
  const first = found.filter((f) => ruleById.get(f.rule)?.judgesFigures && f.place.uri === plan.uri);
  if (first.length === 0) return found;
  const everywhere = new Set<Figure>();
  const wrong = new Map<Figure, Set<object>>();
  for (const { kind, start, end, of } of spots(plan)) {
    if (!first.some((f) => start <= f.place.start && f.place.start < end)) continue;
    if (of) wrong.set(kind, (wrong.get(kind) ?? new Set()).add(of));
    else everywhere.add(kind);
  }
  const doubtful = new Map(
    [...wrong].map(([kind, of]) => [
      kind,
      new Set(plan.layers.filter((l) => madeWith(l, of)).map((l) => l.index)),
    ]),
  );
  const layerAt = (f: Finding['related'][number]) =>
    plan.layers.find((l) => l.place.start <= f.place.start && f.place.start < l.place.end)?.index;
  return found.filter((f) => {
    const kinds = ruleById.get(f.rule)?.restsOn ?? [];
    if (kinds.some((k) => everywhere.has(k))) return false;
    const about = [f.layer, ...f.related.map(layerAt)];
    const shared = f.layer === undefined ? undefined : plan.layers[f.layer]?.areas;
    return !kinds.some((k) => {
      const layers = doubtful.get(k);
      if (!layers || layers.size === 0) return k === 'tolerance' && wrong.has(k);
      if (f.layer === undefined || about.some((i) => i !== undefined && layers.has(i))) return true;
      return (
        kinds.includes('films beneath') &&
        [...layers].some(
          (i) => i <= (f.layer as number) && plan.layers[i]?.areas.some((a) => shared?.includes(a)),
        )
      );
    });
  });
}
