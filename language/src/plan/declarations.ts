/** Paints, mediums, mixes, pigments of one's own: made first, filled after, since they may name one another. */
import type * as Ast from '../../generated/ast.ts';
import type { Pigment } from '../materials/types.ts';
import type { Placeless } from '../memory/key.ts';
import type { Memo } from '../memory/memo.ts';
import type { Piece } from '../syntax/chunk.ts';
import { mediumClauses, mixClauses, paintClauses, pigmentClauses } from '../syntax/clauses.ts';
import { pigmentFields, type Row } from '../syntax/fields.ts';
import { at } from './context.ts';
import { clausesOf, fieldInto, fieldUse } from './fill.ts';
import type { FieldUse, Measure, OwnPigment } from './plan.ts';
import type { Reader } from './scope.ts';
import { type Statement, where } from './statement.ts';

type Filled<T> = { -readonly [K in keyof T]: T[K] };

/** Reads the clauses of a declaration into it. */
const fill = (
  reader: Reader,
  statement: Statement,
  record: boolean,
  thing: object,
  table: Readonly<Record<string, Row>>,
): void => {
  Object.assign(
    thing,
    clausesOf({ reader, record, here: where(reader, statement) }, statement.parsed.declaration?.node, table),
  );
};

/** The clauses of a declaration that may name others. */
export const CLAUSES = {
  pigment: pigmentClauses,
  paint: paintClauses,
  medium: mediumClauses,
  mix: mixClauses,
} as const;

const stated = { text: 'stated in the plan', mark: 'assumption' } as const;

/** What a painter states of a pigment of their own, and the pigment it is like. */
interface Stated {
  readonly own: Pick<OwnPigment, 'name' | 'density' | 'oilAbsorption' | 'lightfast' | 'hazards'>;
  readonly base: Pigment;
  /** the file it stands in: another file may have one of that name */
  readonly uri: string;
}

/** The catalogue's pigment with the painter's own figures in their places. */
function merged({ own, base }: Placeless<Stated>): Pigment {
  const figure = (m: Placeless<Measure>) => ({ low: m.value.low, high: m.value.high, source: stated });
  const usable = (m: Placeless<Measure> | undefined): m is Placeless<Measure> =>
    m !== undefined && m.value.low > 0;
  return {
    ...base,
    id: own.name,
    names: [own.name, ...base.names],
    density: usable(own.density) ? figure(own.density) : base.density,
    oilAbsorption: usable(own.oilAbsorption) ? figure(own.oilAbsorption) : base.oilAbsorption,
    paintOil: usable(own.oilAbsorption) ? undefined : base.paintOil,
    lightfastness: own.lightfast ? { value: own.lightfast.value, source: stated } : base.lightfastness,
    hazards: [...new Set([...base.hazards, ...own.hazards.map((h) => h.value)])],
  };
}

/** Fills what was declared. */
export function fillMaterial(
  reader: Reader,
  statement: Statement,
  word: keyof typeof CLAUSES,
  thing: object,
  record: boolean,
  memo: Memo<Pigment>,
): void {
  fill(reader, statement, record, thing, CLAUSES[word]);
  if (word === 'pigment') fillPigment(reader, statement, thing as Filled<OwnPigment>, record, memo);
}

/** Own pigments may be like one another; one that is like itself stays without a catalogue pigment. */
function fillPigment(
  reader: Reader,
  statement: Statement,
  own: Filled<OwnPigment>,
  record: boolean,
  memo: Memo<Pigment>,
): void {
  for (const { node, base } of statement.parsed.fields as readonly Piece<Ast.PigmentField>[]) {
    if (!node.word) continue;
    const from = { reader, record, here: at(reader.context.uri, statement.chunk.start + base) };
    (own.fields as FieldUse[]).push(fieldUse(node, from, pigmentFields));
    fieldInto(own, node, from, pigmentFields);
  }
  const like = own.like?.is;
  if (like?.kind !== 'pigment') return;
  const { name, density, oilAbsorption, lightfast, hazards } = own;
  own.pigment = memo.get<Stated>(
    { own: { name, density, oilAbsorption, lightfast, hazards }, base: like.pigment, uri: own.place.uri },
    merged,
  );
}
