import { cataloguedFor } from '../../plan/naming.ts';
import type { NameRole } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { replaceEach } from '../shared/fixes.ts';
import { languageReference, quoted, thereIs } from '../shared/words.ts';

/** Names that only the catalogue has, by the word a message has for them. */
const WHAT: Partial<Record<NameRole, string>> = {
  support: 'support',
  binder: 'binder',
  resin: 'resin',
  ground: 'material',
  agent: 'agent',
};

/** A binder, resin, support, ground, preparation agent that no table has. */
export const unknownMaterial: Rule = {
  id: 'unknown-material',
  title: 'Material not in the catalogue',
  theme: 'language',
  severity: 'error',
  why: 'Oils, resins, solvents, supports and grounds are named by their common trade names, and their figures come from tables. What is not in a table cannot be computed with.',
  whatToDo: 'Use the nearest name of the catalogue; paintplan explain NAME tells what a name stands for.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const { role, kind, name, near, place, layer } of plan.names) {
      const what = WHAT[role];
      if (what && !kind)
        yield {
          message: `I know no ${what} ${quoted(name)}.${thereIs(name, cataloguedFor(role), near)}`,
          place,
          layer,
          fixes: replaceEach('Change to', place, near),
        };
    }
  },
};
