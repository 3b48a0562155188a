/**
 * The words of the language, each with what it takes and an example: one place for scanner, messages, completion,
 * hovers and the reference page. A test holds the grammar and the highlighting against this list.
 */

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
] as const;

const layerAbout: Record<(typeof LAYER_WORDS)[number], string> = {
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

export const layerFields: readonly Word[] = [
  w(
    'on',
    'areas, and perhaps except',
    'on sky, water except moon',
    'where the layer lies; everywhere when left out',
  ),
  w(
    'prepare',
    'wipe, abrade, oil-out or wash, and perhaps with an agent',
    'prepare oil-out with walnut',
    'what is done to the surface before',
    { repeatable: true, only: 'plan' },
  ),
  w(
    'colour',
    'a paint or mix, or a colour',
    'colour burnt-sienna',
    'the paints and their amounts, by volume',
  ),
  w('medium', 'a share and a medium', 'medium 40 % rich', 'how much of which medium goes into the paint'),
  w('resin', 'a resin', 'resin damar', 'what a varnish is made of'),
  w('material', 'a material', 'material chalk-glue', 'what the layer is made of where that is no paint'),
  w('film', 'a thickness in µm, or veil, thin, full, impasto', 'film 8 µm', 'thickness of one dry coat'),
  w('coats', 'a number', 'coats 3', 'how many times it is laid'),
  w('wipe-out', 'areas', 'wipe-out moon', 'where the colour is lifted out while it is open'),
  w('wait', 'a time', 'wait 3 days', 'how long you wait at least before the next layer here', {
    only: 'plan',
  }),
  w('after', 'a time', 'after 9 months', 'how long at least after what lies beneath', { only: 'plan' }),
  w('painted', 'a date', 'painted 2027-01-14', 'the day it was laid', { only: 'plan' }),
  w('dry', 'a date', 'dry 2027-01-17', 'the day it was seen touch-dry; corrects the estimates', {
    only: 'plan',
  }),
  w(
    'measured',
    'a colour, and perhaps in with an area',
    'measured lab(58 -6 -18) in sky',
    'the colour as measured',
    { repeatable: true },
  ),
  w('made', 'a year or two years', 'made 1800..1820', 'when this layer was added', { only: 'record' }),
  w('evidence', 'words in quotes', 'evidence "S1, SEM-EDX"', 'how it is known', {
    only: 'record',
    repeatable: true,
  }),
  w(
    'allow',
    'a rule and because with the reason in quotes',
    'allow lean-over-fat because "dry-brushed"',
    'silences one rule on this layer',
    { repeatable: true },
  ),
  w('note', 'words in quotes', 'note "Only a breath."', 'words for the report', { repeatable: true }),
];

export const studioFields: readonly Word[] = [
  w('temperature', 'a temperature', 'temperature 18 °C', 'of the room'),
  w('humidity', 'a share', 'humidity 55 %', 'of the air'),
  w('room', 'a volume', 'room 40 m³', 'of the room, for the air'),
  w('air-changes', 'a number per hour', 'air-changes 2 per hour', 'how often the air of the room is renewed'),
  w('session', 'a time', 'session 3 hours', 'how long a sitting lasts'),
  w('light', 'lux and hours per year', 'light 150 lux 3000 hours per year', 'where the painting will hang'),
  w('light-source', 'D65, D50 or A', 'light-source D65', 'under which colours are judged'),
  w(
    'specular',
    'included or excluded',
    'specular excluded',
    'whether gloss counts when colours are compared',
  ),
];

export const pigmentFields: readonly Word[] = [
  w('oil-absorption', 'grams of oil', 'oil-absorption 22 g/100g', 'linseed oil that wets 100 g, rubbed out'),
  w('density', 'a density', 'density 4.1 g/cm³', 'of the dry pigment'),
  w('masstone', 'a colour', 'masstone #7a2b1d', 'the colour of a full, covering film'),
  w('tint', '1:N, a white and a colour', 'tint 1:4 PW6 #c59a8c', 'the colour in a mixture with a white'),
  w('over-black', 'a colour, at a film', 'over-black #30211d at 20 µm', 'the colour of a film over black'),
  w('over-white', 'a colour, at a film', 'over-white #a5442a at 20 µm', 'the colour of a film over white'),
  w('lightfast', 'I, II, III, IV or V', 'lightfast I', 'class of ASTM D4302'),
  w('hazard', 'hazards', 'hazard lead', 'what to beware of'),
];

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
  'color',
] as const;

/** Reserved as words yet allowed as names, where the grammar leaves no doubt. */
export const nameableWords = ['dry', 'light', 'oil'] as const;

const nameable: ReadonlySet<string> = new Set(nameableWords);
const joining: ReadonlySet<string> = new Set(joiningWords);

export const isNameable = (word: string): boolean => nameable.has(word);

/** Words that go on with a declaration rather than begin something. */
export const isJoining = (word: string): boolean => joining.has(word) && word !== 'color';

export type Block = 'layer' | 'studio' | 'pigment' | 'sample';

export const fieldsOf = (block: Block): readonly Word[] =>
  block === 'layer'
    ? layerFields
    : block === 'studio'
      ? studioFields
      : block === 'pigment'
        ? pigmentFields
        : [];

export const isLayerWord = (word: string): boolean => (LAYER_WORDS as readonly string[]).includes(word);

/** Which block a declaration's braces hold; undefined where it has none. */
export function blockOf(word: string): Block | undefined {
  if (isLayerWord(word)) return 'layer';
  return word === 'studio' || word === 'pigment' || word === 'sample' ? word : undefined;
}

const declarations = new Map(declarationWords.map((d) => [d.word, d]));
const fields = new Map(
  (['layer', 'studio', 'pigment'] as const).map((b) => [b, new Map(fieldsOf(b).map((f) => [f.word, f]))]),
);

export const declarationWord = (word: string): Word | undefined => declarations.get(word);

export const fieldWord = (block: Block, word: string): Word | undefined =>
  block === 'sample' ? undefined : fields.get(block)?.get(word === 'color' ? 'colour' : word);

/** Every word that cannot be a name, units aside. */
export const isReserved = (word: string): boolean =>
  declarations.has(word) ||
  joining.has(word) ||
  (['layer', 'studio', 'pigment'] as const).some((b) => fieldWord(b, word) !== undefined);
