/** Which areas a name after `on`, `except`, `wipe-out` or `in` means. */
import type { Named } from '../../generated/ast.ts';
import { type At, nameUse } from './context.ts';
import type { AreaUse, Place } from './plan.ts';
import { guess, mention, type Reader } from './scope.ts';

/** Areas and groups by name; a group's value is its areas. */
export interface Areas {
  readonly names: ReadonlyMap<
    string,
    { readonly areas: readonly string[]; readonly kind: 'area' | 'group'; readonly place: Place }
  >;
  readonly all: readonly string[];
  /** position of each in `all` */
  readonly order: ReadonlyMap<string, number>;
}

const sets = new WeakMap<readonly string[], ReadonlySet<string>>();

/** A list's set, made once: groups share their lists. */
function setOf(list: readonly string[]): ReadonlySet<string> {
  const known = sets.get(list) ?? new Set(list);
  sets.set(list, known);
  return known;
}

/** The areas meant by some uses but not by others, in the order of their declaration. */
export function areasMeant(
  areas: Areas,
  on: readonly AreaUse[],
  except: readonly AreaUse[],
): readonly string[] {
  if (except.length === 0 && on.length <= 1) return on[0]?.areas ?? areas.all;
  const widest = on.reduce(
    (a, b) => (b.areas.length > a.areas.length ? b : a),
    on[0] ?? { areas: areas.all },
  );
  if (
    except.length === 0 &&
    on.every((a) => a === widest || a.areas.every((name) => setOf(widest.areas).has(name)))
  )
    return widest.areas;
  const without = new Set(except.flatMap((a) => a.areas));
  const named = on.length > 0 ? new Set(on.flatMap((a) => a.areas)) : areas.all;
  const place = (a: string) => areas.order.get(a) ?? 0;
  return [...named].filter((a) => !without.has(a)).sort((a, b) => place(a) - place(b));
}

export function areaUse(
  reader: Reader,
  areas: Areas,
  named: Named | undefined,
  where: At,
): AreaUse | undefined {
  const use = nameUse(named, where);
  if (!use) return undefined;
  const found = areas.names.get(use.name);
  const near = found ? undefined : guess(reader, use.name, () => [...areas.names.keys()]);
  mention(reader, 'area', use, where, { kind: found?.kind, target: found?.place, near });
  return found ? { ...use, areas: found.areas, known: true } : { ...use, areas: [], known: false, near };
}
