/**
 * Every field of the language, one row each: what its value is, in what unit and bounds, where it may stand, what it is
 * called in the Plan, and its words for people. Reading, comparing, JSON, reports, completion and the rules about fields
 * walk these rows, so that none of them can forget one; a field of the grammar that has no row does not compile.
 */
import type * as Ast from '../../generated/ast.ts';
import type { Hazard, Lightfastness } from '../materials/types.ts';
import type { Bounds } from './bounds.ts';
import * as bounds from './bounds.ts';
import type { FamilyName } from './families.ts';

/** What a field's value is. How each kind is read, printed and exported stands in `plan/values.ts`. */
export type ValueKind =
  | 'figure'
  | 'film'
  | 'day'
  | 'years'
  | 'text'
  | 'note'
  | 'choice'
  | 'choices'
  | 'area'
  | 'areas'
  | 'extent'
  | 'preparation'
  | 'formula'
  | 'layerColour'
  | 'colour'
  | 'measured'
  | 'liquid'
  | 'material'
  | 'ingredient'
  | 'light'
  | 'price'
  | 'swatch'
  | 'allow'
  | 'unknown';

/** What is known of a value wherever it stands. */
export interface Row {
  readonly value: ValueKind;
  /** of a figure */
  readonly unit?: FamilyName;
  /** of each figure in it, in order */
  readonly bounds?: readonly Bounds[];
  /** what a choice is made of */
  readonly choices?: readonly string[];
  /** what one of the choices is, where the field's word does not say it */
  readonly noun?: string;
  /** which table of the catalogue names a material */
  readonly role?: 'binder' | 'resin' | 'ground' | 'support';
  /** what a formula or ingredient is made of */
  readonly of?: 'paint' | 'colour' | 'medium';
  /** its property in the Plan, where that is not its word */
  readonly as?: string;
  /** may stand any number of times; all of them count */
  readonly repeatable?: boolean;
  /** in words, what counts where it is not said */
  readonly otherwise?: string;
  /** words around the value of a clause: `in` linseed, 35 % `oil` */
  readonly around?: readonly [before: string, after: string];
}

/** A field of a block: a row with its words. */
export interface Field extends Row {
  /** what follows it, as a painter would say: "I expected …" */
  readonly takes: string;
  readonly example: string;
  /** one line for hovers and completion */
  readonly about: string;
  readonly only?: 'plan' | 'record';
  /** which reports tell it in words of their own, so that it needs no column there */
  readonly told?: 'plan' | 'both';
}

export const LIGHTFASTNESS = ['I', 'II', 'III', 'IV', 'V'] as const satisfies readonly Lightfastness[];

/** What `hazard` may name. */
export const HAZARDS = [
  'lead',
  'cadmium',
  'chromium-vi',
  'arsenic',
  'mercury',
  'cobalt',
  'nickel',
  'manganese',
  'antimony',
  'copper',
  'barium',
  'selenium',
  'fine-dust',
  'silica-dust',
  'pah',
  'sensitiser',
  'toxic-if-swallowed',
  'cyanide-if-heated',
] as const satisfies readonly Hazard[];

export const layerFields = {
  on: {
    value: 'extent',
    as: 'extent',
    takes: 'areas, and perhaps except',
    example: 'on sky, water except moon',
    about: 'where the layer lies; everywhere when left out',
    otherwise: 'everything',
    told: 'both',
  },
  prepare: {
    value: 'preparation',
    choices: ['wipe', 'abrade', 'oil-out', 'wash'],
    noun: 'preparation',
    takes: 'wipe, abrade, oil-out or wash, and perhaps with an agent',
    example: 'prepare oil-out with walnut',
    about: 'what is done to the surface before',
    repeatable: true,
    only: 'plan',
    told: 'plan',
  },
  colour: {
    value: 'layerColour',
    of: 'colour',
    takes: 'a paint or mix, or a colour',
    example: 'colour burnt-sienna',
    about: 'the paints and their amounts, by volume',
    told: 'both',
  },
  medium: {
    value: 'liquid',
    unit: 'share',
    bounds: [bounds.MEDIUM_SHARE],
    takes: 'a share and a medium',
    example: 'medium 40 % rich',
    about: 'how much of which medium goes into the paint',
    told: 'both',
  },
  resin: {
    value: 'material',
    role: 'resin',
    takes: 'a resin',
    example: 'resin damar',
    about: 'what a varnish is made of',
    told: 'both',
  },
  material: {
    value: 'material',
    role: 'ground',
    takes: 'a material',
    example: 'material chalk-glue',
    about: 'what the layer is made of where that is no paint',
    told: 'both',
  },
  film: {
    value: 'film',
    unit: 'film',
    bounds: [bounds.FILM, bounds.LIGHTNESS],
    takes: 'a thickness in µm, or wash, veil, thin, full, impasto, or to lightness and an L*',
    example: 'film 8 µm',
    about: 'thickness of one dry coat',
    told: 'both',
  },
  coats: {
    value: 'figure',
    unit: 'count',
    bounds: [bounds.COATS],
    takes: 'a number',
    example: 'coats 3',
    about: 'how many times it is laid',
    otherwise: '1',
    told: 'plan',
  },
  'wipe-out': {
    value: 'areas',
    takes: 'areas',
    example: 'wipe-out moon',
    about: 'where the colour is lifted out while it is open',
  },
  wait: {
    value: 'figure',
    unit: 'days',
    bounds: [bounds.WAIT],
    takes: 'a time',
    example: 'wait 3 days',
    about: 'how long you wait at least before the next layer here',
    only: 'plan',
    told: 'plan',
  },
  after: {
    value: 'figure',
    unit: 'days',
    bounds: [bounds.TIME],
    takes: 'a time',
    example: 'after 9 months',
    about: 'how long at least after what lies beneath',
    only: 'plan',
    told: 'plan',
  },
  painted: {
    value: 'day',
    takes: 'a date',
    example: 'painted 2027-01-14',
    about: 'the day it was laid',
    only: 'plan',
  },
  dry: {
    value: 'day',
    takes: 'a date',
    example: 'dry 2027-01-17',
    about: 'the day it was seen touch-dry; corrects the estimates',
    only: 'plan',
  },
  measured: {
    value: 'measured',
    takes: 'a colour, and perhaps in with an area',
    example: 'measured lab(58 -6 -18) in sky',
    about: 'the colour as measured',
    repeatable: true,
  },
  made: {
    value: 'years',
    takes: 'a year or two years',
    example: 'made 1800..1820',
    about: 'when this layer was added',
    only: 'record',
  },
  evidence: {
    value: 'text',
    takes: 'words in quotes',
    example: 'evidence "S1, SEM-EDX"',
    about: 'how it is known',
    only: 'record',
    repeatable: true,
  },
  allow: {
    value: 'allow',
    as: 'allows',
    takes: 'a rule and because with the reason in quotes',
    example: 'allow lean-over-fat because "dry-brushed"',
    about: 'silences one rule on this layer',
    repeatable: true,
    told: 'both',
  },
  note: {
    value: 'note',
    as: 'notes',
    takes: 'words in quotes',
    example: 'note "Only a breath."',
    about: 'words for the report',
    repeatable: true,
    told: 'plan',
  },
} as const satisfies Record<Exclude<Ast.LayerField['word'], 'color'>, Field>;

export const studioFields = {
  temperature: {
    value: 'figure',
    unit: 'temperature',
    bounds: [bounds.TEMPERATURE],
    takes: 'a temperature',
    example: 'temperature 18 °C',
    about: 'of the room',
  },
  humidity: {
    value: 'figure',
    unit: 'share',
    bounds: [bounds.HUMIDITY],
    takes: 'a share',
    example: 'humidity 55 %',
    about: 'of the air',
  },
  room: {
    value: 'figure',
    unit: 'room',
    bounds: [bounds.ROOM],
    takes: 'a volume',
    example: 'room 40 m³',
    about: 'of the room, for the air',
  },
  'air-changes': {
    value: 'figure',
    unit: 'count',
    bounds: [bounds.AIR_CHANGES],
    takes: 'a number per hour',
    example: 'air-changes 2 per hour',
    about: 'how often the air of the room is renewed',
  },
  session: {
    value: 'figure',
    unit: 'hours',
    bounds: [bounds.SESSION],
    takes: 'a time',
    example: 'session 3 hours',
    about: 'how long a sitting lasts',
  },
  light: {
    value: 'light',
    bounds: [bounds.LUX, bounds.LIGHT_HOURS],
    takes: 'lux and hours per year',
    example: 'light 150 lux 3000 hours per year',
    about: 'where the painting will hang',
  },
  'light-source': {
    value: 'choice',
    choices: ['D65', 'D50', 'A'],
    noun: 'light source I have',
    takes: 'D65, D50 or A',
    example: 'light-source D65',
    about: 'under which colours are judged',
  },
  specular: {
    value: 'choice',
    choices: ['included', 'excluded'],
    noun: 'way to count gloss',
    takes: 'included or excluded',
    example: 'specular excluded',
    about: 'whether gloss counts when colours are compared',
  },
} as const satisfies Record<Ast.StudioField['word'], Field>;

export const pigmentFields = {
  'oil-absorption': {
    value: 'figure',
    unit: 'oilAbsorption',
    bounds: [bounds.OIL_ABSORPTION],
    takes: 'grams of oil',
    example: 'oil-absorption 22 g/100g',
    about: 'linseed oil that wets 100 g, rubbed out',
  },
  density: {
    value: 'figure',
    unit: 'density',
    bounds: [bounds.DENSITY],
    takes: 'a density',
    example: 'density 4.1 g/cm³',
    about: 'of the dry pigment',
  },
  masstone: {
    value: 'swatch',
    as: 'swatches',
    takes: 'a colour',
    example: 'masstone #7a2b1d',
    about: 'the colour of a full, covering film',
  },
  tint: {
    value: 'swatch',
    as: 'swatches',
    takes: '1:N, a white and a colour',
    example: 'tint 1:4 PW6 #c59a8c',
    about: 'the colour in a mixture with a white',
  },
  'over-black': {
    value: 'swatch',
    as: 'swatches',
    bounds: [bounds.FILM],
    takes: 'a colour, at a film',
    example: 'over-black #30211d at 20 µm',
    about: 'the colour of a film over black',
  },
  'over-white': {
    value: 'swatch',
    as: 'swatches',
    bounds: [bounds.FILM],
    takes: 'a colour, at a film',
    example: 'over-white #a5442a at 20 µm',
    about: 'the colour of a film over white',
  },
  lightfast: {
    value: 'choice',
    choices: LIGHTFASTNESS,
    noun: 'class',
    takes: 'I, II, III, IV or V',
    example: 'lightfast I',
    about: 'class of ASTM D4302',
  },
  hazard: {
    value: 'choices',
    choices: HAZARDS,
    noun: 'hazard I know',
    as: 'hazards',
    takes: 'hazards',
    example: 'hazard lead',
    about: 'what to beware of',
  },
} as const satisfies Record<Ast.PigmentField['word'], Field>;
