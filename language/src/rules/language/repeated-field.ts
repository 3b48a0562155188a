import type { FieldUse, Plan } from '../../plan/plan.ts';
import { declarationWord, fieldWord } from '../../syntax/words.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { takeOut } from '../shared/fixes.ts';
import { languageReference, quoted } from '../shared/words.ts';

type Of = 'layer' | 'studio' | 'pigment';

function* repeated(
  fields: readonly FieldUse[],
  of: Of,
  plan: () => Plan,
  layer?: number,
): Generator<RuleReport> {
  const first = new Map<string, FieldUse>();
  for (const f of fields) {
    const before = first.get(f.name);
    if (!before) first.set(f.name, f);
    else if (!(fieldWord(of, f.name) ?? declarationWord(f.name))?.repeatable)
      yield {
        message: `${quoted(f.name)} is given twice; the first one counts.`,
        place: f.place,
        layer,
        related: [{ message: 'the first one', place: before.place }],
        fixes: [takeOut('Take this one out', plan(), f.place)],
      };
  }
}

/** A field that may stand once, standing twice. */
export const repeatedField: Rule = {
  id: 'repeated-field',
  title: 'Field given twice',
  theme: 'language',
  severity: 'error',
  why: 'A layer has one film, one medium, one number of coats. A second one contradicts the first, or repeats it for nothing.',
  whatToDo: 'Keep one of them.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    yield* repeated(plan.studio.fields, 'studio', () => plan);
    for (const p of plan.pigments) yield* repeated(p.fields, 'pigment', () => plan);
  },
  *checkLayer({ layer }, others) {
    yield* repeated(layer.fields, 'layer', () => others().plan, layer.index);
  },
};
