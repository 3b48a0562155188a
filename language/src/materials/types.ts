/** The shapes of the shipped tables. Every figure names where it comes from. */

/** How far a figure may be trusted. `published` carries a source that was seen; the others say so themselves. */
export type Mark = 'published' | 'second-hand' | 'memory' | 'common practice' | 'derived' | 'assumption';

/** Where a figure or a statement comes from: words fit to be printed, and their mark. */
export interface Source {
  readonly text: string;
  readonly mark: Mark;
}

/** A range with its source. Units are stated where the field is declared. */
export interface Figure {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
}

/** A word (class, category, statement) with its source. */
export interface Statement<T extends string = string> {
  readonly value: T;
  readonly source: Source;
}

/** How much shows through a film of usual thickness, in the trade’s four words. */
export type Transparency = 'transparent' | 'semi-transparent' | 'semi-opaque' | 'opaque';
/** ASTM D4302 class in oil: I best, V worst. */
export type Lightfastness = 'I' | 'II' | 'III' | 'IV' | 'V';
/** What a pigment does to the drying of its oil. */
export type DryingClass = 'strong drier' | 'drier' | 'neutral' | 'retarder' | 'strong retarder';

/** Hazards that cautions are written for. One pigment may have several. */
export type Hazard =
  | 'lead'
  | 'cadmium'
  | 'chromium-vi'
  | 'arsenic'
  | 'mercury'
  | 'cobalt'
  | 'nickel'
  | 'manganese'
  | 'antimony'
  | 'copper'
  | 'barium'
  | 'selenium'
  | 'fine-dust'
  | 'silica-dust'
  | 'pah'
  | 'sensitiser'
  | 'toxic-if-swallowed'
  | 'cyanide-if-heated';

/** Oil of an unstated paste in multiples of the pigment's oil absorption. A paste at 1 would just hold. */
export interface PasteRule {
  readonly family: string;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly source: Source;
}

/** Symbols of elements: what every lot holds, what often goes with it, what only some lots hold. */
export interface Elements {
  readonly sure: readonly string[];
  readonly beside: readonly string[];
  readonly trace: readonly string[];
  readonly source: Source;
}

/** A year with its source; negative before the era. */
export interface Dated {
  readonly year: number;
  readonly source: Source;
}

/** When a pigment was first known, first sold, common, and from when it is rare: each may stand alone. */
export interface Dates {
  readonly known?: Dated;
  readonly sold?: Dated;
  readonly common?: Dated;
  readonly rareAfter?: Dated;
}

/**
 * One pigment: identity, density, oil, optics in words, drying, light, hazards, dates; each figure with its source.
 */
export interface Pigment {
  /** Unique name in the catalogue: code and variety, or the trade name where there is no code. `PBr7 burnt-sienna`. */
  readonly id: string;
  /** Colour Index generic name, as the open standard writes it (`PB15:3`); absent where none was given. */
  readonly code?: string;
  /** The second word that tells apart pigments of one code; a plain word as the language writes it. */
  readonly variety?: string;
  /** True where `variety` may be left out because this is what the bare code means. */
  readonly byDefault?: boolean;
  /** Common name first, other names after it. */
  readonly names: readonly string[];
  readonly constitution?: string;
  readonly composition: Statement;
  /** What an analysis of elements would find. */
  readonly elements?: Elements;
  readonly cas?: string;
  /** g/cm³ */
  readonly density: Figure;
  /** Linseed oil to wet the dry pigment, rub-out, g per 100 g pigment (ASTM D281). */
  readonly oilAbsorption: Figure;
  /** Oil in a workable paint as handbooks print it, g per 100 g pigment: old, and above a rub-out. */
  readonly paintOil?: Figure;
  /** The same in a second handbook. */
  readonly paintOilAlso?: Figure;
  /** How soft its paste is ground; absent where nothing but the usual rule is known. */
  readonly paste?: PasteRule;
  readonly refractiveIndex?: Figure;
  readonly transparency: Statement<Transparency>;
  /** ASTM D4302 class in oil; absent where not listed. `note` says why ("not listed (fugitive)"). */
  readonly lightfastness?: Statement<Lightfastness>;
  readonly lightfastnessNote?: Statement;
  /** What was read of light and this pigment, in the sources' own terms; no ASTM class follows from it. */
  readonly light?: readonly Statement[];
  readonly drying: Statement<DryingClass>;
  readonly film?: Statement;
  readonly hazards: readonly Hazard[];
  readonly hazardsSource: Source;
  /** Harmonised classification (EU CLP) as text, or what is known of it. */
  readonly classification?: Statement;
  /** Years of use; absent `to` means still used; negative years are before the era; `words` is how the source puts it. */
  readonly used: {
    readonly from?: number;
    readonly to?: number;
    readonly words: string;
    readonly source: Source;
  };
  readonly dates?: Dates;
  readonly incompatibilities?: Statement;
}

/** Families of binders. */
export type BinderKind =
  | 'drying oil'
  | 'semi-drying oil'
  | 'alkyd'
  | 'resin'
  | 'balsam'
  | 'wax'
  | 'egg'
  | 'protein'
  | 'gum'
  | 'acrylic';

/** What holds pigment together: oils, resins, waxes, egg, glue, acrylic. */
export interface Binder {
  /** Name as the language writes it: `linseed`, `stand-oil`, `alkyd`. */
  readonly id: string;
  readonly names: readonly string[];
  readonly kind: BinderKind;
  /** g/cm³, of the material as sold (an alkyd medium with its spirit) */
  readonly density: Figure;
  /** Share by mass that stays in the dry film; 1 for oils. */
  readonly solids: Figure;
  /** What evaporates from it: a solvent id, where `solids` is below 1. */
  readonly carrier?: string;
  readonly refractiveIndex?: Figure;
  readonly iodineValue?: Figure;
  /** Days to touch-dry of a thin unpigmented film at 20 °C. Absent: it does not dry this way. */
  readonly touchDry?: Figure;
  readonly yellowing?: Statement;
  readonly flexibility?: Statement;
  readonly notes?: Statement;
}

/** A published limit of a vapour in the air of a work place, with its source. */
export interface SolventLimit {
  /** who published it */
  readonly whose: string;
  /** over which it is an average: a working day of 8 to 10, or a quarter of one */
  readonly hours: number;
  readonly ppm?: number;
  readonly mgPerM3?: number;
  readonly source: Source;
}

/** What evaporates: density, volatility, published limits, fire. */
export interface Solvent {
  readonly id: string;
  readonly names: readonly string[];
  readonly cas?: string;
  /** g/ml */
  readonly density: Figure;
  /** g/mol */
  readonly molarMass?: Figure;
  /** °C */
  readonly boiling?: Figure;
  /** kPa at 20 °C */
  readonly vapourPressure?: Figure;
  /** relative to n-butyl acetate = 1 */
  readonly evaporationRate?: Figure;
  /** °C */
  readonly flashPoint?: Figure;
  /** every one that was found, in no order */
  readonly limits: readonly SolventLimit[];
  readonly idlh?: Statement;
  readonly odour?: Statement;
  readonly classification?: Statement;
  readonly notes?: Statement;
  /** True for water: it wets a film but its vapour is no hazard. */
  readonly harmless?: boolean;
}

/** Families of supports. */
export type SupportKind = 'flexible' | 'rigid' | 'panel' | 'metal' | 'paper' | 'wall';

/** What is painted on. */
export interface Support {
  readonly id: string;
  readonly names: readonly string[];
  readonly kind: SupportKind;
  /** Must be sized before oil touches it. */
  readonly wantsSize: boolean;
  /** CIELAB D65/2° of the bare surface, for predictions over it. */
  readonly colour: readonly [number, number, number];
  readonly source: Source;
}

/** Families of grounds and of what else `material` may name. */
export type GroundKind = 'oil' | 'emulsion' | 'acrylic' | 'glue' | 'leaf' | 'size' | 'egg' | 'other';

/** What `material NAME` may name: grounds, sizes, leaf, drawing materials, varnish-like layers. */
export interface GroundMaterial {
  readonly id: string;
  readonly names: readonly string[];
  readonly kind: GroundKind;
  /** Which layer kinds it makes sense in (`ground`, `size`, `leaf`, `drawing`…). */
  readonly roles: readonly string[];
  readonly absorbent: boolean;
  /** Firm enough for flexible supports. */
  readonly flexible: boolean;
  /** Days until it may be painted on: least, usual, best. */
  readonly ready: {
    readonly least: number;
    readonly usual: number;
    readonly best: number;
    readonly source: Source;
  };
  /** CIELAB D65/2°, opaque unless `transparent`. */
  readonly colour: readonly [number, number, number];
  readonly transparent?: boolean;
  /** µm dry, usual range */
  readonly film: Figure;
  readonly source: Source;
}

/** Agents of `prepare METHOD with AGENT`: oils and solvents are agents too; these are the rest, sound or not. */
export interface PreparationAgent {
  readonly id: string;
  readonly names: readonly string[];
  readonly verdict: 'sound' | 'leaves-residue' | 'leaves-film' | 'attacks-film';
  readonly why: Statement;
  /** Solvent ids it evaporates, with volume share. */
  readonly solvents?: Readonly<Record<string, number>>;
}

/** All tables of materials; `version` is the number of the data. */
export interface Catalogue {
  readonly version: string;
  readonly pigments: readonly Pigment[];
  readonly binders: readonly Binder[];
  readonly solvents: readonly Solvent[];
  readonly supports: readonly Support[];
  readonly grounds: readonly GroundMaterial[];
  readonly agents: readonly PreparationAgent[];
}
