/** Declarations and the words that mean them: definition, references, rename. Across `use` files places carry their uri. */
import type { Declared, Place, Plan } from '../plan/plan.ts';
import { isName } from '../syntax/terminals.ts';
import { declarationWord, fieldsOf, joiningWords } from '../syntax/words.ts';
import { inside } from './at.ts';

const same = (a: Place, b: Place) => a.uri === b.uri && a.start === b.start;

function declarations(plan: Plan): readonly Declared[] {
  return [
    ...plan.pigments,
    ...plan.paints,
    ...plan.mediums,
    ...plan.mixes,
    ...(plan.implicitArea ? [] : plan.areas),
    ...plan.groups,
    ...plan.layers,
    ...plan.samples,
  ];
}

/** The declared name under an offset: where it stands, and where it is declared. */
export function nameAt(
  plan: Plan,
  offset: number,
): { readonly name: string; readonly place: Place; readonly target: Place } | undefined {
  const used = plan.names.find((n) => n.target && inside(n.place, offset));
  if (used?.target) return { name: used.name, place: used.place, target: used.target };
  const own = declarations(plan).find((d) => d.name && inside(d.namePlace, offset));
  return own && { name: own.name, place: own.namePlace, target: own.namePlace };
}

/** Where the thing under the offset is declared, or the file a `use` names. */
export function definition(plan: Plan, offset: number): Place | undefined {
  const use = plan.uses.find((u) => inside(u.pathPlace, offset));
  if (use?.uri && use.status === 'read') return { uri: use.uri, start: 0, end: 0 };
  return nameAt(plan, offset)?.target;
}

/** Every use of a declaration in a file; with the declaration itself where it stands there. */
export function references(plan: Plan, target: Place, withDeclaration: boolean): Place[] {
  const uses = plan.names.filter((n) => n.target && same(n.target, target)).map((n) => n.place);
  return withDeclaration && plan.uri === target.uri ? [target, ...uses] : uses;
}

/** Why a word cannot be a name, or undefined where it can. */
export function nameFault(name: string): string | undefined {
  if (!isName(name)) return `‘${name}’ cannot be a name: names are words joined by hyphens.`;
  const reserved =
    declarationWord(name) ||
    (joiningWords as readonly string[]).includes(name) ||
    (['layer', 'studio', 'pigment'] as const).some((b) => fieldsOf(b).some((f) => f.word === name));
  if (reserved && !['dry', 'light', 'oil'].includes(name))
    return `‘${name}’ is a word of the language and cannot be a name.`;
  return name === 'g' || name === 'ml' || name === 'x'
    ? `‘${name}’ is a unit and cannot be a name.`
    : undefined;
}
