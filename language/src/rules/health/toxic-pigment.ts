import type { Hazard, Pigment } from '../../materials/types.ts';
import type { Ingredient } from '../../plan/plan.ts';
import { powders } from '../../studio/powder.ts';
import type { Rule } from '../rule.ts';
import { ingredients } from '../shared/ingredients.ts';
import { pigmentsOf } from '../shared/pigments.ts';
import { listed, quoted } from '../shared/words.ts';

const TOXIC: readonly Hazard[] = [
  'lead',
  'cadmium',
  'chromium-vi',
  'arsenic',
  'mercury',
  'nickel',
  'cobalt',
  'manganese',
  'antimony',
  'barium',
  'toxic-if-swallowed',
];

const isHarmless = ({ hazards }: Pigment): boolean => !hazards.some((h) => TOXIC.includes(h));

/** Poisonous pigments, once a plan for each hazard. */
export const toxicPigment: Rule = {
  id: 'toxic-pigment',
  title: 'Poisonous pigment',
  theme: 'health',
  severity: 'info',
  why: 'Some pigments are poison by dust or by mouth. They can be painted with safely, but not sanded, sprayed, ground dry or eaten beside.',
  whatToDo: 'Read the caution and the maker’s safety data sheet before the tube is opened.',
  sources: [
    {
      text: 'OSHA 29 CFR 1910.1025 for lead; the other hazards as marked in the catalogue',
      mark: 'published',
    },
  ],
  restsOn: [],
  appliesTo: ['plan'],
  *check(plan) {
    const { caution } = powders(plan);
    const all = new Map<Hazard, Set<string>>();
    const first = new Map<
      string,
      { readonly p: Pigment; readonly ingredient: Ingredient; readonly layer?: number }
    >();
    const cautions = (p: Pigment) =>
      p.hazards.flatMap((h) => {
        const found = TOXIC.includes(h) ? caution(p, h) : undefined;
        return found ? [[h, found] as const] : [];
      });
    for (const { ingredient, layer } of ingredients(plan))
      for (const p of pigmentsOf(ingredient)) {
        if (first.has(p.id)) continue;
        first.set(p.id, { p, ingredient, layer });
        for (const [h] of cautions(p)) all.set(h, (all.get(h) ?? new Set()).add(p.id));
      }
    const told = new Set<Hazard>();
    // by name, so that the order of the text does not decide which of them speaks
    const byName = [...first.values()].sort((a, b) => (a.p.id < b.p.id ? -1 : a.p.id > b.p.id ? 1 : 0));
    for (const { p, ingredient, layer } of byName) {
      const fresh = cautions(p).filter(([h]) => !told.has(h));
      if (fresh.length === 0) continue;
      for (const [h] of fresh) told.add(h);
      const others = [...new Set(fresh.flatMap(([h]) => [...(all.get(h) ?? [])]))].filter(
        (id) => id !== p.id,
      );
      const also = others.length > 0 ? ` The same holds for ${listed(others.sort().map(quoted))}.` : '';
      yield {
        message: `${quoted(p.id)} (${p.names.find((n) => n !== p.id) ?? p.id}): ${listed(fresh.map(([, c]) => c.title.toLowerCase()))}. ${fresh.map(([, c]) => c.text).join(' ')}${also} The maker’s safety data sheet comes first.`,
        place: { ...ingredient.place, end: ingredient.variety?.place.end ?? ingredient.place.end },
        layer,
        // while others bring the same, it is not got rid of by this one alone
        ...(others.length === 0
          ? { objection: { pigment: p, everywhere: true, otherwise: isHarmless } }
          : {}),
      };
    }
  },
};
