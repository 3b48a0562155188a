/** Reads what a declaration or a block says, by its table: each value into the property its row names. */
import type { AstNode } from 'langium';
import type { Field, Row } from '../syntax/fields.ts';
import { placeOf, wordPlace } from './context.ts';
import type { FieldUse, Stated } from './plan.ts';
import { emptyLists, type Slot, slotsOf } from './properties.ts';
import { type FieldAt, type FieldNode, partOf, reads } from './values.ts';

type Table = Readonly<Record<string, Row>>;
type Draft = Record<string, unknown>;

/** Puts a value where its row says. What is given twice keeps its first value; the rule about it looks at `fields`. */
function put(draft: Draft, { property, gathered }: Slot, value: unknown): void {
  if (value === undefined) return;
  const before = draft[property];
  if (gathered) (before as unknown[]).push(value);
  else if (before === undefined || (Array.isArray(before) && before.length === 0)) draft[property] = value;
}

/** What a declaration says outside braces. */
export function clausesOf<T extends Table>(from: FieldAt, node: AstNode | undefined, table: T): Stated<T> {
  const draft: Draft = emptyLists(table);
  for (const slot of slotsOf(table).values()) {
    const { word, row } = slot;
    const child = (node as unknown as Record<string, AstNode | undefined> | undefined)?.[word];
    const part = partOf[row.value];
    if (child === undefined || part === undefined) continue;
    const alone = { $cstNode: child.$cstNode, word, [part]: child } as unknown as FieldNode;
    put(draft, slot, reads[row.value](alone, from, row));
  }
  return draft as unknown as Stated<T>;
}

/** The word of a field as the table has it: `color` is another spelling. */
const spelt = (word: string): string => (word === 'color' ? 'colour' : word);

/** One field of a block, read into a draft that has the block's lists. */
export function fieldInto(draft: object, node: FieldNode, from: FieldAt, table: Table): void {
  const slot = slotsOf(table).get(spelt(node.word));
  if (slot) put(draft as Draft, slot, reads[slot.row.value](node, from, slot.row));
}

/** A field as written, for rules about missing, repeated or misplaced fields. */
export function fieldUse(node: FieldNode, { here, record }: FieldAt, table: Record<string, Field>): FieldUse {
  const word = spelt(node.word);
  const only = table[word]?.only;
  const misplaced =
    only === 'record' && !record ? 'not-in-plan' : only === 'plan' && record ? 'not-in-record' : undefined;
  return {
    name: word,
    place: placeOf(node, here),
    wordPlace: wordPlace(node, here),
    ...(misplaced ? { misplaced } : {}),
  };
}
