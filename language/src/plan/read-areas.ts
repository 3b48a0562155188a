/** Areas and groups as they are declared. */
import type * as Ast from '../../generated/ast.ts';
import { areaClauses, groupClauses } from '../syntax/clauses.ts';
import { type Areas, areasMeant } from './areas.ts';
import { clausesOf } from './fill.ts';
import type { Area, Group, Place, Plan } from './plan.ts';
import { each, here, type Reading } from './reading.ts';
import { declared } from './statement.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

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
    const said = clausesOf({ ...reading, here: here(reading, statement) }, node, areaClauses);
    if (base && claim(base.name, 'area', base.namePlace, [base.name])) areas.push({ ...base, ...said });
  });
  const groups: Group[] = [];
  const order = new Map(areas.map((a, i) => [a.name, i]));
  each<Ast.Group>(reading, 'group', (node, statement) => {
    const base = declared(reading.reader, statement);
    if (!base) return;
    const known: Areas = { names, all: [], order };
    const { members } = clausesOf(
      { ...reading, areas: known, here: here(reading, statement) },
      node,
      groupClauses,
    );
    if (claim(base.name, 'group', base.namePlace, members.length > 0 ? areasMeant(known, members, []) : []))
      groups.push({ ...base, members });
  });
  return { areas, groups, names };
}
