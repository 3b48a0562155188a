import type { FieldUse, Plan } from '../../plan/plan.ts';
import { declarationWord, fieldWord } from '../../syntax/words.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { takeOut } from '../shared/fixes.ts';
import { languageReference, quoted } from '../shared/words.ts';

type Of = 'layer' | 'studio' | 'pigment';

function* repeated(plan: Plan, fields: readonly FieldUse[], of: Of, layer?: number): Generator<RuleReport> {
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
        fixes: [takeOut('Take this one out', plan, f.place)],
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
    yield* repeated(plan, plan.studio.fields, 'studio');
    for (const p of plan.pigments) yield* repeated(plan, p.fields, 'pigment');
    for (const l of plan.layers) yield* repeated(plan, l.fields, 'layer', l.index);
  },
};
