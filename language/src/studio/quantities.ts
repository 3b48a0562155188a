/**
 * How much of everything a plan takes: share of the support × its area × wet film × coats × waste. A wiped-out area
 * takes as much as the rest, since the colour lies there before it is lifted. Volumes in ml, masses in g.
 */
import { combine, type Interval, plus, scale } from '../materials/interval.ts';
import type { Paint, Plan } from '../plan/plan.ts';
import type { Assumption, LayerStudy, Quantities } from '../results/study.ts';
import { paintDensity, tubeDensity } from './density.ts';
import { preparationVolume, thinners } from './emissions.ts';
import { groundVolume } from './grounds.ts';
import { asInterval, type LiquidMemo, liquidDensity, liquidId, liquidsNamed, paintsOfMix } from './recipe.ts';
import { residueVolume } from './residue.ts';
import {
  BRUSHES,
  GROUND_SOLIDS,
  LAID,
  MOST_COATS,
  PIECES,
  PREPARATION_SOURCE,
  VARNISH_SOLIDS,
  WASTE,
  WASTE_SOURCE,
} from './settings.ts';
import { coatVolume, type Studied, supportArea } from './surface.ts';
import { varnishLiquid, varnishVolume } from './varnish.ts';

export { materialsCsv } from './materials-csv.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
type PaintAmount = Mutable<Quantities['paints'][number]>;
type AgentAmount = Mutable<Quantities['agents'][number]>;

const product = (x: Interval, y: Interval): Interval => combine(x, y, (a, b) => a * b);

/** Densities of a plan's paints, each worked out once. */
function densities(): (paint: Paint) => Interval | undefined {
  const known = new Map<Paint, Interval | undefined>();
  return (paint) => {
    if (!known.has(paint)) known.set(paint, paintDensity(paint));
    return known.get(paint);
  };
}

interface Coat {
  readonly paints: readonly PaintAmount[];
  readonly medium?: { readonly name: string; readonly ml: Interval };
}

/** What one coat takes, mixes told as the paints in them. */
function coat(
  plan: Plan,
  layer: LayerStudy,
  volume: Interval,
  density: (paint: Paint) => Interval | undefined,
): Coat {
  const paints = new Map<string, PaintAmount>();
  const whole = layer.composition?.wetDensity ?? { low: 1, likely: 1, high: 1 };
  const add = (name: string, ml: Interval, paint: Paint | undefined) => {
    const g = product(ml, (paint ? density(paint) : tubeDensity(plan, layer, name)) ?? whole);
    const before = paints.get(name);
    paints.set(name, before ? { name, ml: plus(before.ml, ml), g: plus(before.g, g) } : { name, ml, g });
  };
  let medium: Coat['medium'];
  for (const { what, name, share } of layer.composition?.applied ?? []) {
    const ml = scale(volume, share);
    if (what === 'medium') medium = { name, ml };
    else {
      const mix = plan.visible.mixes.get(name);
      const inside = mix && paintsOfMix(mix, (p) => density(p)?.likely ?? whole.likely);
      if (inside) for (const [paint, part] of inside) add(paint.name, scale(ml, part), paint);
      else add(name, ml, plan.visible.paints.get(name));
    }
  }
  return { paints: [...paints.values()], medium };
}

/** Undefined for records and palettes, and where the support has no size. */
export function quantities(study: Studied): Quantities | undefined {
  const { plan } = study;
  const support = supportArea(plan);
  if (plan.kind !== 'plan' || !support) return undefined;

  const memo: LiquidMemo = new Map();
  const density = densities();
  const thinner = thinners(study, memo);
  const paints = new Map<string, PaintAmount>();
  const mediums = new Map<string, Interval>();
  const agents = new Map<string, AgentAmount>();
  const sessions: Quantities['sessions'][number][] = [];
  const sum = (a: Interval | undefined, b: Interval | undefined) => (a && b ? plus(a, b) : (b ?? a));
  const use = (name: string, method: string, ml: Interval | undefined, stays?: Interval) => {
    const key = `${method} ${name}`;
    const before = agents.get(key);
    agents.set(key, { name, method, ml: ml && sum(before?.ml, ml), stays: sum(before?.stays, stays) });
  };

  for (const layer of study.layers) {
    const { name, prepare } = layer.layer;
    const { coats } = layer;
    for (const preparation of prepare) {
      const { method, agent } = preparation;
      const stays = residueVolume(study, layer.layer, support, preparation);
      if (method && agent?.is)
        use(
          agent.name,
          method,
          agent.is.kind === 'agent' && PIECES.includes(agent.is.agent.id)
            ? undefined
            : scale(preparationVolume(study, layer.layer, support, method), coats),
          stays && scale(stays, coats),
        );
    }
    const ground = groundVolume(study, layer, support);
    if (ground) use(ground.name, LAID, ground.ml);

    const varnish = varnishVolume(study, layer, support);
    if (varnish?.sold) use(varnish.name, 'varnish', scale(varnish.ml, coats));
    else if (varnish) {
      use(varnish.name, 'varnish', scale(varnish.resin, coats));
      if (varnish.spirit) use(varnish.spirit.solvent.id, 'varnish', scale(varnish.spirit.ml, coats));
    }

    const volume = coatVolume(study, layer, support);
    if (!volume) continue;
    const brushes = thinner(layer.layer);
    if (brushes) use(brushes.id, 'brushes', scale(BRUSHES, coats));
    const one = coat(plan, layer, volume, density);
    for (const p of one.paints) {
      const [ml, g] = [scale(p.ml, coats), scale(p.g, coats)];
      const before = paints.get(p.name);
      paints.set(
        p.name,
        before ? { name: p.name, ml: plus(before.ml, ml), g: plus(before.g, g) } : { name: p.name, ml, g },
      );
    }
    if (one.medium) {
      const ml = scale(one.medium.ml, coats);
      const before = mediums.get(one.medium.name);
      mediums.set(one.medium.name, before ? plus(before, ml) : ml);
    }
    const shown = one.paints.map(({ name: paint, ml }) => ({ name: paint, ml }));
    for (let n = 1; n <= Math.min(coats, MOST_COATS); n++)
      sessions.push({ layer: name, coat: n, paints: shown, medium: one.medium });
  }

  return {
    paints: [...paints.values()],
    mediums: [...mediums].map(([name, ml]) => ({
      name,
      ml,
      ingredients: (liquidsNamed(plan, name, memo) ?? []).map(({ liquid, share }) => {
        const part = scale(ml, share);
        return { name: liquidId(liquid), ml: part, g: product(part, asInterval(liquidDensity(liquid))) };
      }),
    })),
    agents: [...agents.values()],
    sessions,
    assumptions: assumptions(study, [...agents.values()]),
  };
}

function assumptions(study: Studied, agents: readonly AgentAmount[]): readonly Assumption[] {
  const assumptions: Assumption[] = [
    { field: 'waste', value: `${WASTE * 100} %`, why: WASTE_SOURCE.text, source: WASTE_SOURCE },
  ];
  const methods = new Set(agents.map((a) => a.method));
  if (methods.has('brushes'))
    assumptions.push({
      field: 'brushes',
      value: `${BRUSHES.low} to ${BRUSHES.high} ml a sitting`,
      why: BRUSHES.source.text,
      source: BRUSHES.source,
    });
  if (agents.some((a) => a.ml && ['wipe', 'wash', 'oil-out', 'abrade'].includes(a.method)))
    assumptions.push({
      field: 'prepare',
      value: 'ml for every m²',
      why: PREPARATION_SOURCE.text,
      source: PREPARATION_SOURCE,
    });
  if (study.layers.some((l) => groundVolume(study, l, { low: 1, likely: 1, high: 1 })))
    assumptions.push({
      field: 'grounds',
      value: `${GROUND_SOLIDS.low * 100} to ${GROUND_SOLIDS.high * 100} % solids`,
      why: GROUND_SOLIDS.source.text,
      source: GROUND_SOLIDS.source,
    });
  if (study.layers.some((l) => varnishLiquid(l)?.sold === false))
    assumptions.push({
      field: 'varnish',
      value: `${VARNISH_SOLIDS.low * 100} to ${VARNISH_SOLIDS.high * 100} % resin`,
      why: VARNISH_SOLIDS.source.text,
      source: VARNISH_SOLIDS.source,
    });
  if (study.layers.some((l) => l.layer.wipeOut.length > 0))
    assumptions.push({
      field: 'wipe-out',
      value: 'not taken off',
      why: 'colour that is wiped out has been laid before, so it is bought and mixed all the same',
    });
  const most = study.layers.find((l) => l.coats > MOST_COATS);
  if (most)
    assumptions.push({
      field: 'coats',
      value: `${MOST_COATS} sittings listed`,
      why: `${most.layer.name} has ${most.coats} coats: all are in the amounts, not all in the list of sittings`,
    });
  return assumptions;
}
