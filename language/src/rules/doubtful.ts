/**
 * One slip, one finding. What rests on a figure that another rule has just called impossible would only say so again in
 * other words, so it is left out until the figure is mended.
 */
import type { Formula, Ingredient, Layer, Measure, Plan } from '../plan/plan.ts';
import type { Finding } from './rule.ts';

/** What figures are about: of what a film is made and how much, how long it waits, the studio, the size of the picture. */
type Kind = 'film' | 'time' | 'climate' | 'air' | 'surface' | 'tolerance';

/** Rules that find fault with a figure itself. */
const FIRST: readonly string[] = ['out-of-range', 'parts-not-100', 'mixed-amounts'];

/** Rules that compute with figures, and with which. */
const RESTS_ON: Readonly<Record<string, readonly Kind[]>> = {
  'air-unknown': ['film', 'air', 'surface'],
  'beading-risk': ['film'],
  'fast-over-slow': ['film', 'time', 'climate'],
  'fat-colour-low': ['film'],
  'film-too-thick-for-kind': ['film'],
  'glaze-cannot-lighten': ['film', 'tolerance'],
  'glaze-hides': ['film'],
  'glaze-invisible': ['film'],
  'ground-not-cured': ['time', 'climate'],
  'lean-over-fat': ['film'],
  'measured-far-from-predicted': ['film'],
  'not-ready': ['film', 'time', 'climate'],
  'oil-out-excess': ['film'],
  'sample-thickness-outside': ['film'],
  'short-open-time': ['film', 'climate', 'air'],
  'slow-underlayer': ['film'],
  'target-missed': ['film', 'tolerance'],
  'thick-fat-film': ['film'],
  'too-much-medium': ['film'],
  'too-much-solvent': ['film'],
  underbound: ['film'],
  'underlayer-drowned': ['film'],
  'vapour-over-limit': ['film', 'air', 'surface'],
  'varnish-too-early': ['film', 'time', 'climate'],
  'zinc-in-film': ['film'],
};

/** Rules about a colour rest on every film beneath, too. */
const SEEN: readonly string[] = [
  'glaze-cannot-lighten',
  'glaze-hides',
  'glaze-invisible',
  'measured-far-from-predicted',
  'target-missed',
  'underlayer-drowned',
];

interface Spot {
  readonly kind: Kind;
  readonly start: number;
  readonly end: number;
  /** the declaration it stands in, or the layer; neither for the whole plan */
  readonly of?: object;
}

function* spots(plan: Plan): Generator<Spot> {
  const spot = (kind: Kind, x: Measure | Formula | undefined, of?: object): Spot[] =>
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
  const seen = new Set<object>();
  const inFormula = (f: Formula | undefined): boolean =>
    f?.parts.some((p) => holds(p.ingredient.is)) ?? false;
  const holds = (is: Is): boolean => {
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
    if (!of || seen.has(of)) return false;
    seen.add(of);
    return wrong.has(of) || ('formula' in of && inFormula(of.formula));
  };
  return (
    wrong.has(layer) ||
    inFormula(layer.colour?.kind === 'formula' ? layer.colour.formula : undefined) ||
    holds(layer.medium?.of?.is)
  );
}

/** Findings without those that follow from a figure found impossible. */
export function withoutFollowing(plan: Plan, found: readonly Finding[]): readonly Finding[] {
  const first = found.filter((f) => FIRST.includes(f.rule) && f.place.uri === plan.uri);
  if (first.length === 0) return found;
  const everywhere = new Set<Kind>();
  const wrong = new Map<Kind, Set<object>>();
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
    const kinds = RESTS_ON[f.rule] ?? [];
    if (kinds.some((k) => everywhere.has(k))) return false;
    const about = [f.layer, ...f.related.map(layerAt)];
    const shared = f.layer === undefined ? undefined : plan.layers[f.layer]?.areas;
    return !kinds.some((k) => {
      const layers = doubtful.get(k);
      if (!layers || layers.size === 0) return k === 'tolerance' && wrong.has(k);
      if (f.layer === undefined || about.some((i) => i !== undefined && layers.has(i))) return true;
      return (
        SEEN.includes(f.rule) &&
        [...layers].some(
          (i) => i <= (f.layer as number) && plan.layers[i]?.areas.some((a) => shared?.includes(a)),
        )
      );
    });
  });
}
