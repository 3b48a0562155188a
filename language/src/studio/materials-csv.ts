/** The materials list of a plan as a table: paints, mediums and what they are mixed of, agents, and liquids in all. */
import { agent, solvent } from '../materials/catalogue.ts';
import { combine, type Interval, plus, scale } from '../materials/interval.ts';
import type { Quantities, Study } from '../results/study.ts';
import { csv } from './csv.ts';
import { mixtures } from './parts.ts';
import { asInterval, type Liquid, liquidDensity, liquidId, liquidsNamed } from './recipe.ts';
import { LAID } from './settings.ts';
import { type Purchase, shopping } from './shopping.ts';
import { sittings } from './sittings.ts';

const HEAD = [
  ...['kind', 'name', 'for', 'ml_low', 'ml_likely', 'ml_high', 'g_low', 'g_likely', 'g_high'],
  ...['parts', 'tubes', 'tube_ml', 'cost_likely', 'cost_high', 'currency'],
];

/** Three figures are more than an estimate is worth. */
const figure = (x: number): number => Number(x.toPrecision(3));
const figures = (x: Interval | undefined) =>
  x ? [figure(x.low), figure(x.likely), figure(x.high)] : ['', '', ''];

/** Oils, resins and solvents over all mediums and agents: what must be in the house. */
export function liquidTotals(
  study: Pick<Study, 'plan'>,
  amounts: Quantities,
): readonly { readonly name: string; readonly ml: Interval; readonly g: Interval }[] {
  const totals = new Map<string, { liquid: Liquid; ml: Interval }>();
  const add = (liquid: Liquid, ml: Interval) => {
    const before = totals.get(liquidId(liquid));
    totals.set(liquidId(liquid), { liquid, ml: before ? plus(before.ml, ml) : ml });
  };
  const named = (name: string, ml: Interval) => {
    const liquids = liquidsNamed(study.plan, name);
    for (const { liquid, share } of liquids ?? []) add(liquid, scale(ml, share));
    if (!liquids)
      for (const [id, share] of Object.entries(agent(name)?.solvents ?? {})) {
        const known = solvent(id);
        if (known) add({ kind: 'solvent', solvent: known }, scale(ml, share));
      }
  };
  for (const { name, ml } of amounts.mediums) named(name, ml);
  for (const { name, method, ml } of amounts.agents) if (method !== LAID && ml) named(name, ml);
  return [...totals.values()].map(({ liquid, ml }) => ({
    name: liquidId(liquid),
    ml,
    g: combine(ml, asInterval(liquidDensity(liquid)), (v, d) => v * d),
  }));
}

/**
 * The materials list, waste included. `for` tells the medium an ingredient goes into or what an agent is used for; rows
 * of kind `liquid` add up ingredients and agents, rows of kind `mixture` tell the same paint by sittings: do not add them
 * to the others. `notice` comes first, as a `note`.
 */
export function materialsCsv(study: Study, notice?: string): string {
  const amounts = study.quantities;
  const rows: (string | number | undefined)[][] = [HEAD];
  const row = (
    kind: string,
    name: string,
    use: string,
    ml?: Interval,
    g?: Interval,
    parts?: number,
    bought?: Purchase,
  ) => {
    const cost = bought?.cost;
    const tubes = [
      bought?.tubes.likely,
      bought?.tube,
      cost?.amount.likely,
      cost?.amount.high,
      cost?.currency,
    ];
    rows.push([kind, name, use, ...figures(ml), ...figures(g), parts, ...tubes]);
  };
  if (notice) row('note', notice, '');
  if (amounts) {
    const bought = new Map(shopping(study.plan, amounts).purchases.map((p) => [p.name, p]));
    for (const p of amounts.paints)
      row('paint', p.name, 'painting', p.ml, p.g, undefined, bought.get(p.name));
    for (const m of amounts.mediums) {
      row('medium', m.name, 'painting', m.ml);
      for (const i of m.ingredients) row('ingredient', i.name, m.name, i.ml, i.g);
    }
    for (const a of amounts.agents) {
      row('agent', a.name, a.method, a.ml);
      if (a.stays) row('stays', a.name, a.method, a.stays);
    }
    for (const l of liquidTotals(study, amounts)) row('liquid', l.name, 'all', l.ml, l.g);
    for (const { number, entries } of sittings(study.calendar))
      for (const { portions, mediums, layers, ml } of mixtures(study, entries)) {
        const use = `sitting ${number}: ${layers.join(', ')}`;
        for (const p of portions) row('mixture', p.name, use, ml && scale(ml, p.share), undefined, p.parts);
        for (const m of mediums) row('mixture', m.name, use, m.ml);
      }
  }
  return csv(rows);
}
