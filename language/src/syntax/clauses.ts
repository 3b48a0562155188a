/** The parts of declarations that stand outside braces: rows like those of fields, so that the same walks reach them. */
import type { AstNode } from 'langium';
import type * as Ast from '../../generated/ast.ts';
import * as bounds from './bounds.ts';
import type { Row } from './fields.ts';

/** What a declaration says besides its word, its name and its block. */
type Clause<N extends AstNode> = Exclude<keyof N, keyof AstNode | 'word' | 'called' | 'fields' | 'rows'>;
type Clauses<N extends AstNode, Within extends Clause<N> = never> = Record<Exclude<Clause<N>, Within>, Row>;

const within = {
  value: 'figure',
  unit: 'count',
  bounds: [bounds.TOLERANCE],
  around: ['within', ''],
} as const satisfies Row;
const area = { value: 'area', as: 'in' } as const satisfies Row;
const side = { value: 'figure', unit: 'size', bounds: [bounds.SIDE] } as const satisfies Row;

export const areaClauses = {
  share: { value: 'figure', unit: 'share', bounds: [bounds.AREA_SHARE] },
} as const satisfies Clauses<Ast.Area>;

export const groupClauses = { members: { value: 'areas' } } as const satisfies Clauses<Ast.Group>;

export const pigmentClauses = {
  like: { value: 'ingredient', of: 'paint', around: ['like', ''] },
} as const satisfies Clauses<Ast.OwnPigment>;

export const paintClauses = {
  unknown: { value: 'unknown' },
  formula: { value: 'formula', of: 'paint' },
  binder: { value: 'material', role: 'binder', around: ['in', ''] },
  oil: { value: 'figure', unit: 'share', bounds: [bounds.OIL_SHARE], around: ['', 'oil'] },
  handGround: { value: 'choice', choices: ['hand-ground'], otherwise: 'a tube' },
  tube: { value: 'figure', unit: 'tube', bounds: [bounds.TUBE], around: ['tube', ''] },
  price: { value: 'price', bounds: [bounds.PRICE], around: ['price', ''] },
} as const satisfies Clauses<Ast.Paint>;

export const mediumClauses = {
  formula: { value: 'formula', of: 'medium' },
} as const satisfies Clauses<Ast.Medium>;

export const mixClauses = {
  formula: { value: 'formula', of: 'colour' },
  target: { value: 'colour', around: ['target', ''] },
  within,
} as const satisfies Clauses<Ast.Mix>;

export const targetClauses = {
  area,
  colour: { value: 'colour' },
  within,
} as const satisfies Clauses<Ast.Target>;

export const sampleClauses = { area: { ...area, around: ['in', ''] } } as const satisfies Clauses<Ast.Sample>;

/** A support's unknown material and its one unit are read with the rest. */
export const supportClauses = {
  material: { value: 'material', role: 'support' },
  height: side,
  width: { ...side, around: ['×', ''] },
} as const satisfies Clauses<Ast.Support, 'unknown' | 'unit'>;

/** A layer of a cross-section and its film; `unknown` is read with the film. */
export const sampleRow = {
  value: { value: 'film', unit: 'film', bounds: [bounds.SECTION_FILM], as: 'film' },
} as const satisfies Clauses<Ast.SampleRow, 'layer' | 'unknown'>;

/** What is said of the whole file. */
export const fileClauses = {
  title: { value: 'note' },
  start: { value: 'day' },
  made: { value: 'years' },
  note: { value: 'note', as: 'notes', repeatable: true },
  allow: { value: 'allow', as: 'allows', repeatable: true },
} as const satisfies Record<string, Row>;
