/** Areas and groups as they are declared. */
import type * as Ast from '../../generated/ast.ts';
import { insideFirst } from '../memory/inside-first.ts';
import { areaClauses, groupClauses } from '../syntax/clauses.ts';
import { type Areas, areasMeant } from './areas.ts';
import { clausesOf } from './fill.ts';
import type { Area, Declared, Group, Place, Plan } from './plan.ts';
import { each, here, type Reading } from './reading.ts';
import { declared, type Statement } from './statement.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A group before its members are looked up: those it holds are read first. */
interface Grouped {
  readonly node: Ast.Group;
  readonly statement: Statement;
  readonly base: Declared;
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
    const said = clausesOf({ ...reading, here: here(reading, statement) }, node, areaClauses);
    if (base && claim(base.name, 'area', base.namePlace, [base.name])) areas.push({ ...base, ...said });
  });
  const groups: Group[] = [];
  const order = new Map(areas.map((a, i) => [a.name, i]));
  const written: Grouped[] = [];
  each<Ast.Group>(reading, 'group', (node, statement) => {
    const base = declared(reading.reader, statement);
    if (base) written.push({ node, statement, base });
  });
  const read = ({ node, statement, base }: Grouped): true => {
    const known: Areas = { names, all: [], order };
    const { members } = clausesOf(
      { ...reading, areas: known, here: here(reading, statement) },
      node,
      groupClauses,
    );
    if (claim(base.name, 'group', base.namePlace, members.length > 0 ? areasMeant(known, members, []) : []))
      groups.push({ ...base, members });
    return true;
  };
  const byName = new Map(written.toReversed().map((g) => [g.base.name, g]));
  const inside = ({ node }: Grouped) => (node.members ?? []).flatMap((m) => byName.get(m.name) ?? []);
  const answers = new Map<Grouped, { readonly value: true | undefined }>();
  for (const group of written) insideFirst(group, inside, read, answers);
  groups.sort((a, b) => a.place.start - b.place.start);
  return { areas, groups, names };
}
