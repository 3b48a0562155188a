import { cautionFor } from '../materials/cautions.ts';
import type { Hazard, Pigment } from '../materials/types.ts';
import { ingredients } from './ingredients.ts';
import type { Rule } from './rule.ts';
import { listed, quoted } from './words.ts';

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

/** Poisonous pigments, once a plan, where each hazard is first met. */
export const toxicPigment: Rule = {
  id: 'toxic-pigment',
  title: 'Poisonous pigment',
  severity: 'info',
  why: 'Some pigments are poison by dust or by mouth. They can be painted with safely, but not sanded, sprayed, ground dry or eaten beside.',
  whatToDo: 'Read the caution and the maker’s safety data sheet before the tube is opened.',
  sources: [
    {
      text: 'OSHA 29 CFR 1910.1025 for lead; the other hazards as marked in the catalogue',
      mark: 'published',
    },
  ],
  appliesTo: ['plan'],
  *check(plan) {
    const told = new Set<Hazard>();
    const seen = new Set<string>();
    for (const { ingredient, layer } of ingredients(plan)) {
      const pigments: Pigment[] =
        ingredient.is.kind === 'pigment'
          ? [ingredient.is.pigment]
          : ingredient.is.kind === 'paint' && ingredient.is.paint.place.uri !== plan.uri
            ? (ingredient.is.paint.formula?.parts.flatMap((p) =>
                p.ingredient.is.kind === 'pigment' ? [p.ingredient.is.pigment] : [],
              ) ?? [])
            : [];
      for (const p of pigments) {
        if (seen.has(p.id)) continue;
        seen.add(p.id);
        const fresh = p.hazards.filter((h) => TOXIC.includes(h) && !told.has(h));
        if (fresh.length === 0) continue;
        for (const h of fresh) told.add(h);
        yield {
          message: `${quoted(p.id)} (${p.names[0]}): ${listed(fresh.map((h) => cautionFor(h).title.toLowerCase()))}. ${fresh.map((h) => cautionFor(h).text).join(' ')} The maker’s safety data sheet comes first.`,
          place: ingredient.place,
          layer,
        };
      }
    }
  },
};
