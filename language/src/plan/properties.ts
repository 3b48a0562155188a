/** What a table of fields makes of a thing in the Plan: the names of its properties, and which of them are lists. */
import type { Row } from '../syntax/fields.ts';
import type { Chosen } from './written.ts';

type Rows = Readonly<Record<string, Row>>;

/** Rows whose property is a list: empty where nothing is said. */
type Listed = { readonly repeatable: true } | { readonly value: 'swatch' | 'areas' | 'choices' };
/** Rows of which every value written is one more in the list. */
type Gathered = { readonly repeatable: true } | { readonly value: 'swatch' };

type Camel<W extends string> = W extends `${infer A}-${infer B}` ? `${A}${Capitalize<Camel<B>>}` : W;
type PropertyOf<W extends string, R> = R extends { readonly as: infer P extends string } ? P : Camel<W>;

type ValueOf<R extends Row, Values, Materials> = R extends {
  readonly value: 'choices';
  readonly choices: readonly (infer C)[];
}
  ? readonly Chosen<C & string>[]
  : R extends { readonly value: 'choice'; readonly choices: readonly (infer C)[] }
    ? Chosen<C & string>
    : R extends { readonly role: infer Of extends keyof Materials }
      ? Materials[Of]
      : Values[R['value'] & keyof Values];

/** The properties of a thing whose fields stand in `Table`: `Values` by kind of value, `Materials` by role. */
export type Properties<Table extends Rows, Values, Materials> = {
  readonly [W in keyof Table & string as Table[W] extends Listed ? never : PropertyOf<W, Table[W]>]?: ValueOf<
    Table[W],
    Values,
    Materials
  >;
} & {
  readonly [W in keyof Table & string as Table[W] extends Listed
    ? PropertyOf<W, Table[W]>
    : never]: Table[W] extends Gathered
    ? readonly ValueOf<Table[W], Values, Materials>[]
    : ValueOf<Table[W], Values, Materials>;
};

/** A word of the language as a name in code and JSON: `wipeOut`. */
export const camel = (word: string): string => word.replace(/-(.)/g, (_, c: string) => c.toUpperCase());

/** The property a field has in the Plan. */
const propertyOf = (word: string, row: Row): string => row.as ?? camel(word);

/** Whether every value written is one more in a list. */
const isGathered = (row: Row): boolean => row.repeatable === true || row.value === 'swatch';

const isListed = (row: Row): boolean => isGathered(row) || row.value === 'areas' || row.value === 'choices';

/** One row of a table with what follows from it. */
export interface Slot {
  readonly word: string;
  readonly row: Row;
  readonly property: string;
  readonly gathered: boolean;
  readonly listed: boolean;
}

const known = new WeakMap<Rows, ReadonlyMap<string, Slot>>();

/** The rows of a table by word, worked out once: reading goes through them at every keystroke. */
export function slotsOf(table: Rows): ReadonlyMap<string, Slot> {
  const made =
    known.get(table) ??
    new Map(
      Object.entries(table).map(([word, row]) => [
        word,
        { word, row, property: propertyOf(word, row), gathered: isGathered(row), listed: isListed(row) },
      ]),
    );
  known.set(table, made);
  return made;
}

const held = new WeakMap<Rows, readonly Slot[]>();

/** The rows whose figures have bounds. */
export function boundedOf(table: Rows): readonly Slot[] {
  const made = held.get(table) ?? [...slotsOf(table).values()].filter(({ row }) => row.bounds);
  held.set(table, made);
  return made;
}

/** The lists of a thing of which nothing is said yet; new ones at every call, since a thing being read fills them. */
export function emptyLists(table: Rows): Record<string, []> {
  const lists: Record<string, []> = {};
  for (const { property, listed } of slotsOf(table).values()) if (listed) lists[property] = [];
  return lists;
}
