import type { Fix, Formula } from '../../plan/plan.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { declaredFormulas, layerFormulas, type Placed } from '../shared/ingredients.ts';
import { languageReference, quoted } from '../shared/words.ts';

/** Where per cent are written for all but one, that one is what is left to 100. */
function remainder({ parts }: Formula): Fix[] {
  const [bare, ...more] = parts.filter((p) => !p.amount);
  if (!bare || more.length > 0 || parts.some((p) => p.amount && p.amount.kind !== '%')) return [];
  const left = Number((100 - parts.reduce((s, p) => s + (p.amount?.value ?? 0), 0)).toFixed(2));
  if (!(left > 0)) return [];
  return [
    replace(
      `Write ${left} % ${bare.ingredient.name}`,
      { ...bare.place, end: bare.place.start },
      `${left} % `,
    ),
  ];
}

/** Parts, per cent, grams and millilitres in one formula. */
export const mixedAmounts: Rule = {
  id: 'mixed-amounts',
  title: 'Amounts of different kinds',
  theme: 'language',
  severity: 'error',
  why: 'Parts, per cent, grams and millilitres cannot be added up. One formula keeps to one of them.',
  whatToDo: 'Write all amounts in the same kind.',
  sources: [languageReference],
  restsOn: [],
  judgesFigures: true,
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    yield* mixed(declaredFormulas(plan));
  },
  *checkLayer({ layer }) {
    yield* mixed(layerFormulas(layer));
  },
};

function* mixed(formulas: readonly Placed[]): Generator<RuleReport> {
  for (const { formula: f, layer, name } of formulas) {
    if (f.amounts !== 'mixed') continue;
    const kinds = [...new Set(f.parts.map((p) => p.amount?.kind ?? 'no amount at all'))];
    yield {
      message: `${quoted(name)} mixes amounts in ${kinds.join(', ')}: write all of them in one kind.`,
      place: f.place,
      layer,
      fixes: remainder(f),
    };
  }
}
