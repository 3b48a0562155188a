/**
 * The Plan: what a file says, resolved and in plain units, tolerant of missing parts. Everything after it (study,
 * rules, features, reports) reads this and never the syntax tree. Missing or broken parts are `undefined`; nothing
 * here throws. Units: µm, days, °C, cm, m³, lux, fractions of 1 unless a field says otherwise.
 */
import type {
  Binder,
  GroundMaterial,
  Hazard,
  Lightfastness,
  Pigment,
  PreparationAgent,
  Solvent,
  Support,
} from '../materials/types.ts';
import type { ColourValue, Day, Measure, NameUse, Place, Problem, YearRange } from './written.ts';

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

/** `pigment NAME like CODE { … }`: a pigment or tube of the painter's own, with what they measured. */
export interface OwnPigment extends Declared {
  readonly like?: Ingredient;
  /** The catalogue's pigment with the painter's figures put in; absent while `like` cannot be resolved. */
  readonly pigment?: Pigment;
  readonly oilAbsorption?: Measure; // g per 100 g
  readonly density?: Measure; // g/cm³
  readonly swatches: readonly Swatch[];
  readonly lightfast?: { readonly value: Lightfastness; readonly place: Place };
  readonly hazards: readonly { readonly value: Hazard; readonly place: Place }[];
  readonly fields: readonly FieldUse[];
}

/** Pigments by mass in a binder. */
export interface Paint extends Declared {
  readonly formula?: Formula;
  /** `= unknown` (records): nobody knows what it is made of */
  readonly unknown?: Place;
  readonly binder?: NameUse & { readonly is?: Binder; readonly near?: readonly string[] };
  /** oil content by mass, fraction of 1 */
  readonly oil?: Measure;
}

/** Binders, solvents, resins and other mediums by volume. */
export interface Medium extends Declared {
  readonly formula?: Formula;
}

/** Paints and other mixes by volume. */
export interface Mix extends Declared {
  readonly formula?: Formula;
  readonly target?: ColourValue;
  readonly within?: Measure; // ΔE00
}

/** A part of the picture that layers lie on. */
export interface Area extends Declared {
  /** fraction of the support */
  readonly share?: Measure;
}

/** Areas under one name. */
export interface Group extends Declared {
  readonly members: readonly AreaUse[];
}

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

/** One layer as written, its names resolved. */
export interface Layer extends Declared {
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
  readonly prepare: readonly Preparation[];
  /** a formula, a known colour of an opaque surface, `unknown` (records), or nothing written */
  readonly colour?:
    | { readonly kind: 'formula'; readonly formula: Formula }
    | { readonly kind: 'value'; readonly value: ColourValue }
    | { readonly kind: 'unknown'; readonly place: Place };
  /** share of the applied volume, and of what: a declared medium, or a single oil, resin or solvent */
  readonly medium?: {
    readonly share?: Measure;
    readonly of?: NameUse & {
      readonly is?:
        | { readonly kind: 'medium'; readonly medium: Medium }
        | { readonly kind: 'binder'; readonly binder: Binder }
        | { readonly kind: 'solvent'; readonly solvent: Solvent };
      readonly near?: readonly string[];
    };
    readonly place: Place;
  };
  readonly resin?: NameUse & { readonly is?: Binder; readonly near?: readonly string[] };
  readonly material?: NameUse & { readonly is?: GroundMaterial; readonly near?: readonly string[] };
  /** dry, per coat, µm */
  readonly film?: Measure;
  readonly coats?: Measure;
  readonly wipeOut: readonly AreaUse[];
  readonly wait?: Measure; // days
  readonly after?: Measure; // days
  readonly painted?: Day;
  readonly dry?: Day;
  readonly measured: readonly {
    readonly colour: ColourValue;
    readonly in?: AreaUse;
    readonly place: Place;
  }[];
  readonly made?: YearRange;
  readonly evidence: readonly { readonly text: string; readonly place: Place }[];
  readonly allows: readonly Allow[];
  readonly notes: readonly string[];
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

/** A colour an area shall have in the end. */
export interface Target extends Omit<Declared, 'name' | 'namePlace'> {
  readonly in?: AreaUse;
  readonly colour?: ColourValue;
  /** ΔE00; the study's default where not given */
  readonly within?: Measure;
}

/** A cross-section of a record: layers bottom to top with what was measured. */
export interface Sample extends Declared {
  readonly in?: AreaUse;
  readonly layers: readonly {
    readonly layer: NameUse & { readonly is?: Layer; readonly near?: readonly string[] };
    readonly film?: Measure;
    readonly place: Place;
  }[];
}

/** The room, its air and its light, as far as the plan says. */
export interface Studio {
  readonly place?: Place;
  readonly temperature?: Measure; // °C
  readonly humidity?: Measure; // fraction
  readonly room?: Measure; // m³
  readonly airChanges?: Measure; // per hour
  readonly session?: Measure; // hours
  readonly light?: { readonly lux: Measure; readonly hoursPerYear?: Measure; readonly place: Place };
  readonly lightSource?: { readonly value: 'D65' | 'D50' | 'A'; readonly place: Place };
  readonly specular?: { readonly value: 'included' | 'excluded'; readonly place: Place };
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
  readonly uri?: string;
  readonly plan?: Plan;
}

/** What the plan is painted on, and its size. */
export interface PlanSupport {
  readonly material?: NameUse & { readonly is?: Support; readonly near?: readonly string[] };
  /** cm, height × width */
  readonly height?: Measure;
  readonly width?: Measure;
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
  /** Every use of a declared name, for references, rename, unused-declaration. */
  readonly references: readonly Reference[];
}

/** One use of a declared name. */
export interface Reference {
  readonly name: string;
  readonly kind: 'area' | 'group' | 'pigment' | 'paint' | 'medium' | 'mix' | 'layer';
  readonly place: Place;
  /** namePlace of the declaration */
  readonly target: Place;
}
