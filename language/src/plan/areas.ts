/** Areas and groups, and which of them a name after `on`, `except`, `wipe-out` or `in` means. */
import type * as Ast from '../../generated/ast.ts';
import type { Named } from '../../generated/ast.ts';
import { type At, nameUse } from './context.ts';
import { measure } from './measure.ts';
import type { Area, AreaUse, Group, Place, Plan } from './plan.ts';
import { each, here, type Reading } from './reading.ts';
import { guess, type Reader, refer } from './scope.ts';
import { declared } from './statement.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

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
  const declared = areas.names.get(use.name);
  if (!declared)
    return { ...use, areas: [], known: false, near: guess(reader, use.name, () => [...areas.names.keys()]) };
  refer(reader, declared.kind, use, declared.place);
  return { ...use, areas: declared.areas, known: true };
}

/** Every area and group of a file; a name claimed twice is a clash. */
export function readAreas(reading: Reading, clashes: Mutable<Plan['clashes'][number]>[]) {
  const areas: Area[] = [];
  const names = new Map<string, { areas: readonly string[]; kind: 'area' | 'group'; place: Place }>();
  const claim = (name: string, kind: 'area' | 'group', place: Place, members: readonly string[]) => {
    const first = names.get(name);
    if (first) clashes.push({ name, kind, first: first.place, again: place, fromUse: false });
    else names.set(name, { areas: members, kind, place });
    return !first;
  };
  each<Ast.Area>(reading, 'area', (node, statement) => {
    const base = declared(reading.reader, statement);
    const share = measure(reading.context, node.share, here(reading, statement), 'share');
    if (base && claim(base.name, 'area', base.namePlace, [base.name])) areas.push({ ...base, share });
  });
  const groups: Group[] = [];
  const order = new Map(areas.map((a, i) => [a.name, i]));
  each<Ast.Group>(reading, 'group', (node, statement) => {
    const base = declared(reading.reader, statement);
    if (!base) return;
    const known: Areas = { names, all: [], order };
    const members = (node.members ?? []).flatMap((m): AreaUse[] => {
      const use = areaUse(reading.reader, known, m, here(reading, statement));
      return use ? [use] : [];
    });
    if (claim(base.name, 'group', base.namePlace, members.length > 0 ? areasMeant(known, members, []) : []))
      groups.push({ ...base, members });
  });
  return { areas, groups, names };
}
