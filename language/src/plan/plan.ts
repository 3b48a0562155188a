/**
 * The Plan: what a file says, resolved and in plain units, tolerant of missing parts. Everything after it (study,
 * rules, features, reports) reads this and never the syntax tree. Missing or broken parts are `undefined`; nothing
 * here throws. Units: µm, days, °C, cm, m³, lux, fractions of 1 unless a field says otherwise.
 */
import type {
  Binder,
  GroundMaterial,
  Pigment,
  PreparationAgent,
  Solvent,
  Support,
} from '../materials/types.ts';
import type {
  areaClauses,
  groupClauses,
  mediumClauses,
  mixClauses,
  paintClauses,
  pigmentClauses,
  sampleClauses,
  sampleRow,
  supportClauses,
  targetClauses,
} from '../syntax/clauses.ts';
import type { layerFields, pigmentFields, Row, studioFields } from '../syntax/fields.ts';
import type { Properties } from './properties.ts';
import type {
  Chosen,
  ColourValue,
  Day,
  FilmMeasure,
  Light,
  Measure,
  NameUse,
  Place,
  Problem,
  Quoted,
  YearRange,
} from './written.ts';

export type * from './written.ts';

/** How an amount is written. */
export type AmountKind = 'parts' | '%' | 'g' | 'ml';

/** One part of a formula. */
export interface Part {
  /** As written; absent means one part. Never negative; zero is a finding. */
  readonly amount?: { readonly value: number; readonly kind: AmountKind; readonly place: Place };
  readonly ingredient: Ingredient;
  readonly place: Place;
}

/** What a formula's word turned out to be. */
export type Ingredient = NameUse & {
  /** second word after a code: `PBr7 burnt-sienna` */
  readonly variety?: NameUse;
  readonly is:
    | { readonly kind: 'paint'; readonly paint: Paint }
    | { readonly kind: 'mix'; readonly mix: Mix }
    | { readonly kind: 'medium'; readonly medium: Medium }
    | { readonly kind: 'pigment'; readonly pigment: Pigment; readonly own?: OwnPigment }
    | { readonly kind: 'binder'; readonly binder: Binder }
    | { readonly kind: 'solvent'; readonly solvent: Solvent }
    /** A code of the catalogue that needs a second word, or whose second word it does not know. */
    | { readonly kind: 'needs-variety'; readonly choices: readonly Pigment[] }
    /** Written like a Colour Index code, but none the catalogue knows. */
    | { readonly kind: 'unknown-pigment'; readonly near: readonly string[] }
    /** No declaration or material of that name. */
    | { readonly kind: 'unknown-name'; readonly near: readonly string[] }
    /** It is declared, but as something that cannot stand here (a medium in a colour formula…). */
    | { readonly kind: 'misplaced'; readonly found: string; readonly expected: string };
};

/** Parts joined by `+`. */
export interface Formula {
  readonly parts: readonly Part[];
  /** the one kind of amount used; `none`: no amount written anywhere; `mixed`: more than one kind (a finding) */
  readonly amounts: AmountKind | 'none' | 'mixed';
  readonly place: Place;
}

/** What every declaration with a name shares. */
export interface Declared {
  readonly name: string;
  /** the whole declaration */
  readonly place: Place;
  /** the name alone */
  readonly namePlace: Place;
  /** `///` comment above it, markers removed */
  readonly description?: string;
}

/** A measured colour of a painter’s own pigment or tube. */
export interface Swatch {
  readonly kind: 'masstone' | 'tint' | 'over-black' | 'over-white';
  readonly colour: ColourValue;
  /** tint 1:N with this white, parts by volume of paint */
  readonly tint?: { readonly parts: number; readonly white: Ingredient };
  /** µm dry, for over-black and over-white */
  readonly film?: Measure;
  readonly place: Place;
}

/** `pigment NAME like CODE { … }`: a pigment or tube of the painter's own, with what they measured: g per 100 g, g/cm³. */
export interface OwnPigment extends Declared, Stated<typeof pigmentClauses>, Stated<typeof pigmentFields> {
  /** The catalogue's pigment with the painter's figures put in; absent while `like` cannot be resolved. */
  readonly pigment?: Pigment;
  readonly fields: readonly FieldUse[];
}

/** Pigments by mass in a binder; `unknown` (records): nobody knows what it is made of. `oil` is a fraction by mass. */
export interface Paint extends Declared, Stated<typeof paintClauses> {}

/** Binders, solvents, resins and other mediums by volume. */
export interface Medium extends Declared, Stated<typeof mediumClauses> {}

/** Paints and other mixes by volume; `within` is a ΔE00. */
export interface Mix extends Declared, Stated<typeof mixClauses> {}

/** A part of the picture that layers lie on; its share is a fraction of the support. */
export interface Area extends Declared, Stated<typeof areaClauses> {}

/** Areas under one name. */
export interface Group extends Declared, Stated<typeof groupClauses> {}

/** A name after `on`, `except`, `wipe-out` or `in`: an area, a group, or unknown. */
export interface AreaUse extends NameUse {
  /** names of the areas meant, groups expanded; empty when unknown */
  readonly areas: readonly string[];
  readonly known: boolean;
  readonly near?: readonly string[];
}

/** What a layer is for, in the words of the language. */
export type LayerKind =
  | 'size'
  | 'ground'
  | 'drawing'
  | 'imprimatura'
  | 'underlayer'
  | 'layer'
  | 'glaze'
  | 'scumble'
  | 'leaf'
  | 'varnish'
  | 'retouching'
  | 'deposit';

/** What is done to a surface before a layer. */
export type PrepareMethod = 'wipe' | 'abrade' | 'oil-out' | 'wash';

/** One step of preparation, and with what. */
export interface Preparation {
  readonly method?: PrepareMethod;
  readonly agent?: NameUse & {
    readonly is?:
      | { readonly kind: 'binder'; readonly binder: Binder }
      | { readonly kind: 'solvent'; readonly solvent: Solvent }
      | { readonly kind: 'agent'; readonly agent: PreparationAgent }
      | { readonly kind: 'medium'; readonly medium: Medium };
    readonly near?: readonly string[];
  };
  readonly place: Place;
}

/** A field as written, for rules about missing, repeated or misplaced fields. */
export interface FieldUse {
  readonly name: string;
  /** from the field's word to its end */
  readonly place: Place;
  /** the field's word alone */
  readonly wordPlace: Place;
  /** true when this field does not belong in this kind of declaration or file */
  readonly misplaced?: 'not-in-plan' | 'not-in-record' | 'not-here';
}

/** Where a layer lies, as written and as meant. */
export interface Extent {
  readonly on: readonly AreaUse[];
  readonly except: readonly AreaUse[];
  /** names of the areas meant, in order of declaration */
  readonly areas: readonly string[];
}

/** A formula, a known colour of an opaque surface, or `unknown` (records). */
export type LayerColour =
  | { readonly kind: 'formula'; readonly formula: Formula }
  | { readonly kind: 'value'; readonly value: ColourValue }
  | { readonly kind: 'unknown'; readonly place: Place };

/** Share of the applied volume, and of what: a declared medium, or a single oil, resin or solvent. */
export interface LayerMedium {
  readonly share?: Measure;
  readonly of?: NameUse & {
    readonly is?:
      | { readonly kind: 'medium'; readonly medium: Medium }
      | { readonly kind: 'binder'; readonly binder: Binder }
      | { readonly kind: 'solvent'; readonly solvent: Solvent };
    readonly near?: readonly string[];
  };
  readonly place: Place;
}

/** A colour as measured, and where. */
export interface MeasuredColour {
  readonly colour: ColourValue;
  readonly in?: AreaUse;
  readonly place: Place;
}

/** A name of the catalogue; `unknown` (records): it is said that nobody knows. */
export type MaterialUse<T> = NameUse & {
  readonly is?: T;
  readonly near?: readonly string[];
  readonly unknown?: true;
};

interface Materials {
  readonly binder: MaterialUse<Binder>;
  readonly resin: MaterialUse<Binder>;
  readonly ground: MaterialUse<GroundMaterial>;
  readonly support: MaterialUse<Support>;
}

/** What one tube costs; the currency by its three letters of ISO 4217. */
export interface Price {
  readonly amount: Measure;
  readonly currency: string;
  readonly place: Place;
}

/** What a value of each kind is in the Plan. */
export interface Values {
  readonly figure: Measure;
  readonly film: FilmMeasure;
  readonly day: Day;
  readonly years: YearRange;
  readonly text: Quoted;
  readonly note: string;
  readonly choice: Chosen;
  readonly choices: readonly Chosen[];
  readonly area: AreaUse;
  readonly areas: readonly AreaUse[];
  readonly extent: Extent;
  readonly preparation: Preparation;
  readonly formula: Formula;
  readonly layerColour: LayerColour;
  readonly colour: ColourValue;
  readonly measured: MeasuredColour;
  readonly liquid: LayerMedium;
  readonly material: Materials[keyof Materials];
  readonly ingredient: Ingredient;
  readonly light: Light;
  readonly price: Price;
  readonly swatch: Swatch;
  readonly allow: Allow;
  readonly unknown: Place;
}

/** The properties that a table of fields makes, in the units of its rows. */
export type Stated<Table extends Readonly<Record<string, Row>>> = Properties<Table, Values, Materials>;

/** One layer as written, its names resolved: films µm, dry, per coat; times days. */
export interface Layer extends Declared, Stated<typeof layerFields> {
  readonly kind: LayerKind;
  /** position in the file's order of layers, from 0 */
  readonly index: number;
  /** the kind's word */
  readonly kindPlace: Place;
  readonly on: readonly AreaUse[];
  readonly except: readonly AreaUse[];
  /** Areas it lies on, in order of declaration; all of them where `on` is not given. See `Plan.areas` for the implicit one. */
  readonly areas: readonly string[];
  /** true where it covers the whole support (no `on` and no `except`) */
  readonly everywhere: boolean;
  readonly fields: readonly FieldUse[];
  /**
   * Where a fix may put a new field: offset just inside the braces after the last field, and the text that starts a
   * new line there (line break and indentation, or a space in a one-line block). Absent when the block is broken.
   */
  readonly insertField?: { readonly place: Place; readonly before: string; readonly after: string };
}

/** A rule silenced on purpose, and why. */
export interface Allow {
  readonly rule: string;
  readonly rulePlace: Place;
  readonly because?: string;
  readonly place: Place;
}

/** A colour an area shall have in the end, and how near, ΔE00; the study's default where that is not given. */
export interface Target extends Omit<Declared, 'name' | 'namePlace'>, Stated<typeof targetClauses> {}

/** A cross-section of a record: layers bottom to top with what was measured. */
export interface Sample extends Declared, Stated<typeof sampleClauses> {
  readonly layers: readonly SampleLayer[];
}

/** One layer of a cross-section, its film µm. */
export interface SampleLayer extends Stated<typeof sampleRow> {
  readonly layer: NameUse & { readonly is?: Layer; readonly near?: readonly string[] };
  readonly place: Place;
}

/** The room, its air and its light, as far as the plan says: °C, fractions, m³, per hour, hours. */
export interface Studio extends Stated<typeof studioFields> {
  readonly place?: Place;
  readonly fields: readonly FieldUse[];
}

/** Another file brought in by `use`, and whether it could be read. */
export interface Use {
  readonly path: string;
  readonly pathPlace: Place;
  readonly place: Place;
  readonly status: 'read' | 'missing' | 'outside' | 'cycle' | 'unreadable' | 'too-large';
  /** more words for the status: the cycle, the reason it could not be read */
  readonly detail?: string;
  /** whether it is left out only because too many files use one another */
  readonly overLimit?: boolean;
  /** one that is left out for that further down */
  readonly beyond?: Use;
  readonly uri?: string;
  readonly plan?: Plan;
}

/** What the plan is painted on, and its size: cm, height × width. */
export interface PlanSupport extends Stated<typeof supportClauses> {
  readonly place: Place;
}

/** A whole file, resolved. */
export interface Plan {
  readonly uri: string;
  /** the text it was read from, for fixes that look at the line around a place; absent in plans made otherwise */
  readonly text?: string;
  readonly kind: 'plan' | 'record' | 'palette';
  readonly title?: string;
  readonly description?: string;
  readonly headPlace?: Place;
  /** version of the language stated in the first line */
  readonly language?: { readonly value: number; readonly place: Place };
  readonly start?: Day;
  readonly made?: YearRange;
  readonly studio: Studio;
  readonly support?: PlanSupport;
  /** Declared areas in order. Where none is declared, one implicit area `everything` with share 1 and `implicitArea` set. */
  readonly areas: readonly Area[];
  readonly implicitArea: boolean;
  readonly groups: readonly Group[];
  readonly pigments: readonly OwnPigment[];
  readonly paints: readonly Paint[];
  readonly mediums: readonly Medium[];
  readonly mixes: readonly Mix[];
  readonly layers: readonly Layer[];
  readonly targets: readonly Target[];
  readonly samples: readonly Sample[];
  readonly notes: readonly string[];
  readonly allows: readonly Allow[];
  readonly uses: readonly Use[];
  /** Names that may be used in this file: own declarations first, then those of `use` files (with the file's uri in their place). */
  readonly visible: {
    readonly pigments: ReadonlyMap<string, OwnPigment>;
    readonly paints: ReadonlyMap<string, Paint>;
    readonly mediums: ReadonlyMap<string, Medium>;
    readonly mixes: ReadonlyMap<string, Mix>;
  };
  /** Every name declared twice in this file, or clashing with one from a `use` file. */
  readonly clashes: readonly {
    readonly name: string;
    readonly kind: string;
    readonly first: Place;
    readonly again: Place;
    readonly fromUse: boolean;
  }[];
  /** Everything wrong with the reading itself. */
  readonly problems: readonly Problem[];
  /** Mixes or mediums that contain themselves, as the chain of names. */
  readonly circles: readonly { readonly names: readonly string[]; readonly place: Place }[];
  /** Every name the file uses, in order of reading. */
  readonly names: readonly NamedPlace[];
}

/** What may be named where a name stands. */
export type NameRole =
  | 'area'
  | 'layer'
  | 'pigment'
  | 'paint'
  | 'liquid'
  | 'medium'
  | 'agent'
  | 'binder'
  | 'resin'
  | 'ground'
  | 'support'
  | 'rule';

/** What can be declared under a name. */
export type DeclaredKind = 'area' | 'group' | 'pigment' | 'paint' | 'medium' | 'mix' | 'layer';

/** One use of a name: the role of its place, and what it turned out to be. */
export interface NamedPlace extends NameUse {
  readonly role: NameRole;
  /** what it means; absent where nothing of that name may stand here */
  readonly kind?: DeclaredKind | 'material';
  /** namePlace of the declaration it means */
  readonly target?: Place;
  /** names that may have been meant */
  readonly near?: readonly string[];
  /** a word of a formula, with all that is known of it */
  readonly ingredient?: Ingredient;
  /** index of the layer it stands in */
  readonly layer?: number;
}
