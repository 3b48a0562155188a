import { percentages } from '../../plan/formula-words.ts';
import type { Formula } from '../../plan/plan.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { declaredFormulas, layerFormulas, type Placed } from '../shared/ingredients.ts';
import { languageReference, quoted } from '../shared/words.ts';

const amountsOf = (f: Formula) => f.parts.flatMap((p) => (p.amount ? [p.amount] : []));

/** Percentages of a formula that do not add up to 100. */
export const partsNot100: Rule = {
  id: 'parts-not-100',
  title: 'Percentages do not add up to 100',
  theme: 'language',
  severity: 'error',
  why: 'Per cent are shares of a whole. Where they add up to something else, one of them is wrong, and only you know which.',
  whatToDo: 'Correct them, let the editor rescale them, or write parts instead.',
  sources: [languageReference],
  restsOn: [],
  judgesFigures: true,
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    yield* notWhole(declaredFormulas(plan));
  },
  *checkLayer({ layer }) {
    yield* notWhole(layerFormulas(layer));
  },
};

function* notWhole(formulas: readonly Placed[]): Generator<RuleReport> {
  for (const { formula: f, layer, name } of formulas) {
    if (f.amounts !== '%') continue;
    const amounts = amountsOf(f);
    // an amount of nothing is another rule's
    if (amounts.some((a) => !(a.value > 0))) continue;
    const sum = amounts.reduce((s, a) => s + a.value, 0);
    if (Math.abs(sum - 100) < 0.05) continue;
    const fixable =
      sum > 0 &&
      amounts.length === f.parts.length &&
      amounts.every((a) => a.value > 0) &&
      amounts.length <= 100;
    const values = fixable ? percentages(amounts.map((a) => a.value)) : [];
    yield {
      message: `The percentages of ${quoted(name)} add up to ${Number(sum.toFixed(2))}, not to 100.`,
      place: f.place,
      layer,
      fixes:
        fixable && values.every((v) => v > 0)
          ? [
              {
                title: `Rescale to ${values.join(' + ')} %`,
                edits: amounts.map((a, i) => ({ place: a.place, text: String(values[i]) })),
              },
            ]
          : [],
    };
  }
}
