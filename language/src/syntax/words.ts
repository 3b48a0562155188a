/**
 * The words of the language, each with what it takes and an example: one place for scanner, messages, completion,
 * hovers and the reference page. Those of fields come from their table. A test holds the grammar and the highlighting
 * against this list.
 */
import type * as Ast from '../../generated/ast.ts';
import { type Field, layerFields, pigmentFields, studioFields } from './fields.ts';

export interface Word {
  readonly word: string;
  /** what follows it, as a painter would say: "I expected …" */
  readonly takes: string;
  readonly example: string;
  /** one line for hovers and completion */
  readonly about: string;
  readonly only?: 'plan' | 'record';
  readonly repeatable?: boolean;
}

const w = (word: string, takes: string, example: string, about: string, more: Partial<Word> = {}): Word => ({
  word,
  takes,
  example,
  about,
  ...more,
});

export const LAYER_WORDS = [
  'size',
  'ground',
  'drawing',
  'imprimatura',
  'underlayer',
  'layer',
  'glaze',
  'scumble',
  'leaf',
  'varnish',
  'retouching',
  'deposit',
] as const satisfies readonly Ast.Layer['word'][];

const layerAbout: Record<Ast.Layer['word'], string> = {
  size: 'seals the support before anything else',
  ground: 'the priming the painting stands on',
  drawing: 'lines that guide the work; left out of colour predictions',
  imprimatura: 'a thin transparent tone over the ground',
  underlayer: 'monochrome or first painting below the colours: grisaille, brunaille, verdaccio, dead colour',
  layer: 'body colour',
  glaze: 'transparent, darker over lighter',
  scumble: 'semi-opaque and thin, lighter over darker',
  leaf: 'metal leaf',
  varnish: 'the last protecting film',
  retouching: 'a later repair',
  deposit: 'what time or hands have left: dirt, old adhesive',
};

export const declarationWords: readonly Word[] = [
  w('paintplan', 'the version of the language', 'paintplan 1', 'version of the language, as the first line'),
  w('plan', 'a title in quotes', 'plan "Three pears"', 'a painting to be made'),
  w('record', 'a title in quotes', 'record "Old panel"', 'a painting that exists, documented'),
  w('start', 'a date', 'start 2027-01-11', 'the first day of work; dates follow from it', { only: 'plan' }),
  w('made', 'a year or two years', 'made 1640..1660', 'when the painting was made', { only: 'record' }),
  w(
    'use',
    'the path of a file in quotes',
    'use "palette.paintplan"',
    'brings in pigments, paints, mediums and mixes of another file',
    { repeatable: true },
  ),
  w('studio', 'its facts in braces', 'studio { temperature 18 °C }', 'where the work is done', {
    only: 'plan',
  }),
  w('support', 'a material and a size, height × width', 'support linen 40 x 50 cm', 'what it is painted on'),
  w('area', 'a name and its share', 'area sky 50 %', 'a part of the picture', { repeatable: true }),
  w('group', 'a name, = and areas', 'group pears = pear-light, pear-shadow', 'several areas under one name', {
    repeatable: true,
  }),
  w(
    'pigment',
    'a name and the pigment it is like',
    'pigment my-ochre like PY43 { density 3.2 g/cm³ }',
    'a pigment or tube of your own with what you measured',
    { repeatable: true },
  ),
  w(
    'paint',
    'a name, =, pigments, and the binder after in',
    'paint warm-white = 9 PW6 + 1 PY43 in linseed',
    'pigments by mass in a binder',
    { repeatable: true },
  ),
  w(
    'medium',
    'a name, = and its parts by volume',
    'medium lean = 60 % turpentine + 40 % linseed',
    'what paint is thinned or enriched with',
    { repeatable: true },
  ),
  w(
    'mix',
    'a name, = and paints by volume',
    'mix shadow = 2 umber + 1 ultramarine',
    'paints mixed under a name',
    { repeatable: true },
  ),
  ...LAYER_WORDS.map((k) =>
    w(
      k,
      'a name and its fields in braces',
      `${k} ${k === 'glaze' ? 'warm' : 'first'} { film thin }`,
      layerAbout[k],
      { repeatable: true, ...(k === 'retouching' || k === 'deposit' ? { only: 'record' as const } : {}) },
    ),
  ),
  w(
    'target',
    'an area and the colour wanted',
    'target sky lab(72 -4 -12) within 4',
    'the colour an area is to have in the end',
    { repeatable: true, only: 'plan' },
  ),
  w(
    'sample',
    'a label and layers in braces',
    'sample S1 in sky { priming 140 µm }',
    'a cross-section: layers from below with their measured films',
    { repeatable: true, only: 'record' },
  ),
  w('note', 'words in quotes', 'note "Keep the edge soft."', 'words for the report', { repeatable: true }),
  w(
    'allow',
    'a rule and because with the reason in quotes',
    'allow oily-rags because "the studio has a fire bin"',
    'silences one rule for the whole file',
    { repeatable: true },
  ),
];

/** A field's row with its word. */
export type FieldWord = Word & Field;

const listed = (rows: Readonly<Record<string, Field>>): readonly FieldWord[] =>
  Object.entries(rows).map(([word, row]) => ({ word, ...row }));

const FIELDS = {
  layer: listed(layerFields),
  studio: listed(studioFields),
  pigment: listed(pigmentFields),
  sample: [],
} as const;

/** Words that join; reserved everywhere. */
export const joiningWords = [
  'in',
  'with',
  'because',
  'like',
  'per',
  'within',
  'except',
  'at',
  'unknown',
  'oil',
  'tube',
  'price',
  'hand-ground',
  'color',
] as const;

/** Reserved as words yet allowed as names, where the grammar leaves no doubt. */
export const nameableWords = ['dry', 'light', 'oil', 'tube', 'price'] as const;

const nameable: ReadonlySet<string> = new Set(nameableWords);
const joining: ReadonlySet<string> = new Set(joiningWords);

export const isNameable = (word: string): boolean => nameable.has(word);

/** Words that go on with a declaration rather than begin something. */
export const isJoining = (word: string): boolean => joining.has(word) && word !== 'color';

export type Block = keyof typeof FIELDS;

/** The blocks whose fields begin with a word. */
export const WORDED = ['layer', 'studio', 'pigment'] as const satisfies readonly Block[];

export const fieldsOf = (block: Block): readonly FieldWord[] => FIELDS[block];

export const isLayerWord = (word: string): boolean => (LAYER_WORDS as readonly string[]).includes(word);

/** Which block a declaration's braces hold; undefined where it has none. */
export function blockOf(word: string): Block | undefined {
  if (isLayerWord(word)) return 'layer';
  return word === 'studio' || word === 'pigment' || word === 'sample' ? word : undefined;
}

const declarations = new Map(declarationWords.map((d) => [d.word, d]));
const fields = new Map(WORDED.map((b) => [b, new Map(fieldsOf(b).map((f) => [f.word, f]))]));

export const declarationWord = (word: string): Word | undefined => declarations.get(word);

export const fieldWord = (block: Block, word: string): FieldWord | undefined =>
  block === 'sample' ? undefined : fields.get(block)?.get(word === 'color' ? 'colour' : word);

/** Every word that cannot be a name, units aside. */
export const isReserved = (word: string): boolean =>
  declarations.has(word) || joining.has(word) || WORDED.some((b) => fieldWord(b, word) !== undefined);
