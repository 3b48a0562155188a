/** Declarations and the words that mean them: definition, references, rename. Across `use` files places carry their uri. */
import type { Declared, Place, Plan } from '../plan/plan.ts';
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
):
  | { readonly name: string; readonly place: Place; readonly target: Place; readonly inFormulas: boolean }
  | undefined {
  const used = plan.names.find((n) => n.target && inside(n.place, offset));
  const own = declarations(plan).find((d) => d.name && inside(d.namePlace, offset));
  const inFormulas = (name: string) =>
    Object.values(plan.visible).some((mixed: ReadonlyMap<string, Declared>) => mixed.has(name));
  if (used?.target)
    return {
      name: used.name,
      place: used.place,
      target: used.target,
      inFormulas: used.role !== 'area' && inFormulas(used.name),
    };
  return (
    own && {
      name: own.name,
      place: own.namePlace,
      target: own.namePlace,
      inFormulas: inFormulas(own.name),
    }
  );
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
