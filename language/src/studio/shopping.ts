/** What paint to buy: tubes, and what they cost where the painter says so. Volumes in ml. */
import { type Interval, plus, scale } from '../materials/interval.ts';
import type { Source } from '../materials/types.ts';
import type { Plan } from '../plan/plan.ts';
import type { Assumption, Quantities } from '../results/study.ts';
import { powders } from './powder.ts';
import { figureWords } from './words.ts';

export const TUBE_ML = 40;
const TUBE_SOURCE: Source = {
  text: 'tubes of 37 to 40 ml are the usual small size',
  mark: 'common practice',
};

export interface Purchase {
  readonly name: string;
  /** what one tube holds */
  readonly tube: number;
  /** the paint does not say what its tube holds */
  readonly assumed: boolean;
  /** tubes for the likely amount, and for the highest */
  readonly tubes: { readonly likely: number; readonly high: number };
  /** of all its tubes, where the painter states a price */
  readonly cost?: { readonly amount: Interval; readonly currency: string };
}

export interface Shopping {
  readonly purchases: readonly Purchase[];
  /** by currency; what is stated in different ones is not added */
  readonly costs: readonly { readonly amount: Interval; readonly currency: string }[];
  /** paints of which no price is stated */
  readonly unpriced: readonly string[];
  readonly assumptions: readonly Assumption[];
}

/** Of the paints in a plan's amounts; what the painter grinds comes in no tube. */
export function shopping(plan: Plan, { paints }: Quantities): Shopping {
  const ground = powders(plan).names;
  const costs = new Map<string, Interval>();
  const purchases = paints.flatMap(({ name, ml }): Purchase[] => {
    if (ground.has(name)) return [];
    const paint = plan.visible.paints.get(name);
    const stated = paint?.tube?.value.likely;
    const tube = stated !== undefined && stated > 0 ? stated : TUBE_ML;
    const count = (need: number) => Math.max(1, Math.ceil(need / tube - 1e-9));
    const tubes = { likely: count(ml.likely), high: count(ml.high) };
    const price = paint?.price;
    const one = price && price.amount.value.low >= 0 ? price.amount.value : undefined;
    const amount = one && { ...scale(one, tubes.likely), high: one.high * tubes.high };
    if (price && amount) {
      const before = costs.get(price.currency);
      costs.set(price.currency, before ? plus(before, amount) : amount);
    }
    return [
      {
        name,
        tube,
        assumed: tube !== stated,
        tubes,
        ...(price && amount ? { cost: { amount, currency: price.currency } } : {}),
      },
    ];
  });
  return {
    purchases,
    costs: [...costs].map(([currency, amount]) => ({ amount, currency })),
    unpriced: purchases.flatMap((p) => (p.cost ? [] : [p.name])),
    assumptions: purchases.some((p) => p.assumed)
      ? [
          {
            field: 'tube',
            value: `${TUBE_ML} ml`,
            why: `${TUBE_SOURCE.text}; a paint may say its own: tube 60 ml`,
            source: TUBE_SOURCE,
          },
        ]
      : [],
  };
}

/** `12.50 EUR`, `12.50 to 25 EUR`: money to the hundredth, whatever the rest of the estimate is worth. */
export function costWords({ amount: { likely, high }, currency }: NonNullable<Purchase['cost']>): string {
  const money = (x: number) => (Number.isInteger(x) ? String(x) : x.toFixed(2));
  return likely === high ? `${money(likely)} ${currency}` : `${money(likely)} to ${money(high)} ${currency}`;
}

/** `1 tube of 40 ml, perhaps 2`, with what it costs. */
export function purchaseWords({ tube, tubes, cost }: Purchase): string {
  const one = tubes.likely === 1 ? 'tube' : 'tubes';
  const more = tubes.high > tubes.likely ? `, perhaps ${tubes.high}` : '';
  return `${tubes.likely} ${one} of ${figureWords(tube)} ml${more}${cost ? `: ${costWords(cost)}` : ''}`;
}

/** `Paints: 23.50 EUR. No price: red, white.`; undefined where no price is stated at all. */
export function totalWords({ costs, unpriced }: Shopping): string | undefined {
  if (costs.length === 0) return undefined;
  const sums = costs.map(costWords).join(' and ');
  return `Paints cost ${sums} in all${unpriced.length > 0 ? `; no price is stated of ${unpriced.join(', ')}` : ''}.`;
}
