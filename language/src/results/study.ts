/**
 * The Study: everything computed from a plan, with its grounds. Rules, hovers, reports and the command line read this,
 * so they cannot disagree. Layers carry what is cheap; colour is computed when asked and remembered. Shares and
 * concentrations are fractions of 1, lengths µm, times days, volumes ml, masses g, temperatures °C. Nothing is ever
 * NaN: what cannot be computed is absent, and an assumption says why.
 */
import type { Drying } from '../drying/times.ts';
import type { Composition } from '../film/composition.ts';
import type { Interval } from '../materials/interval.ts';
import type { Pigment, SolventLimit, Source } from '../materials/types.ts';
import type { Confidence } from '../optics/data.ts';
import type { Calibration } from '../optics/swatches.ts';
import type { Layer, OwnPigment, Place, Plan } from '../plan/plan.ts';
import type { State } from './state.ts';

export type { Calibration, Composition, Confidence, Drying, State };

/** A default or guess that a figure rests on. */
export interface Assumption {
  /** field or figure: `film`, `medium`, `temperature`, `oil`, … */
  readonly field: string;
  readonly value: string;
  readonly why: string;
  readonly source?: Source;
}

/** Colour of an area after a layer. CIELAB D65/2°, whatever light source it was computed under (`light`). */
export interface ColourOn {
  readonly area: string;
  readonly lab: readonly [number, number, number];
  readonly hex: string;
  /** true where sRGB cannot show it and hex is the nearest */
  readonly outOfGamut: boolean;
  /** ΔE00 radius within which the truth is expected */
  readonly radius: number;
  readonly confidence: Confidence;
  readonly basis: readonly string[];
}

/** What is computed of one layer; lengths µm, times days. */
export interface LayerStudy {
  readonly layer: Layer;
  /** names of the areas, as in layer.areas */
  readonly areas: readonly string[];
  readonly coats: number;
  /** absent for layers without a formula (sizes, leaf, known colours) or with unresolved names */
  readonly composition?: Composition;
  readonly drying?: Drying;
  /** in a plan, where to look when nobody can tell how it dries (a misspelt paint): it is not ready until it is told */
  readonly notKnown?: Place;
  /** µm of all coats together, dry; defaults applied */
  readonly dryFilm?: Interval;
  readonly assumptions: readonly Assumption[];
  /** per area, indices of the layers beneath it there, nearest first */
  readonly below: ReadonlyMap<string, readonly number[]>;
  /** lazy: colours after this layer per area; empty where nothing can be predicted */
  colours(): readonly ColourOn[];
}

/** What is computed of one area: colours from below upwards, and how near they come to a target. */
export interface AreaStudy {
  readonly name: string;
  /** fraction of the support */
  readonly share: number;
  /** lazy */
  buildUp(): readonly { readonly layer: string; readonly index: number; readonly colour: ColourOn }[];
  target():
    | {
        readonly lab: readonly [number, number, number];
        readonly css: string;
        readonly deltaE00?: number;
        readonly within: number;
      }
    | undefined;
}

/** A layer of which nobody can tell when it is dry, and where to look; line and column count from 1. */
export interface NotKnown {
  readonly layer: string;
  readonly place: Place;
  readonly line: number;
  readonly column: number;
}

/** One coat of one layer in the calendar. */
export interface CalendarEntry {
  readonly layer: string;
  readonly index: number;
  readonly coat: number;
  /**
   * day numbers since 1970-01-01 when the plan has a `start` (or `painted` dates), else days after the beginning; absent
   * where `notKnown` says why
   */
  readonly notBefore?: number;
  readonly likely?: number;
  readonly safeFrom?: number;
  /** the layer at or beneath it of which nobody can tell when it is dry, and where to look */
  readonly notKnown?: NotKnown;
  /**
   * `painted` minus `safeFrom` where painted is given (negative: too early); else, on a layer's last coat, how many days
   * it may be late on the slow clock before it holds up a layer above it. Absent where nothing waits for it.
   */
  readonly daysToSpare?: number;
  readonly heldBy?: { readonly layer: string; readonly area: string; readonly reason: string };
  readonly painted?: number;
}

/** When each coat can be laid: at the earliest, likely, and to be safe. */
export interface Calendar {
  /** true when day numbers are real dates */
  readonly dated: boolean;
  readonly entries: readonly CalendarEntry[];
}

/** What to mix and to buy: ml and g, in all and for each sitting. */
export interface Quantities {
  readonly paints: readonly { readonly name: string; readonly ml: Interval; readonly g: Interval }[];
  readonly mediums: readonly {
    readonly name: string;
    readonly ml: Interval;
    readonly ingredients: readonly { readonly name: string; readonly ml: Interval; readonly g: Interval }[];
  }[];
  /** `ml` as poured, left out for what is used by the piece; `stays`: of that, what the cloth leaves on the painting */
  readonly agents: readonly {
    readonly name: string;
    readonly method: string;
    readonly ml?: Interval;
    readonly stays?: Interval;
  }[];
  /** per session (one coat of one layer) */
  readonly sessions: readonly {
    readonly layer: string;
    readonly coat: number;
    readonly paints: readonly { readonly name: string; readonly ml: Interval }[];
    readonly medium?: { readonly name: string; readonly ml: Interval };
  }[];
  readonly assumptions: readonly Assumption[];
}

/** Solvent vapour in the worst sitting, beside published limits: g, ppm, mg/m³. */
export interface Air {
  readonly solvents: readonly {
    readonly name: string;
    readonly grams: Interval;
    readonly ppm?: Interval;
    readonly mgPerM3?: Interval;
    readonly limit?: { readonly ppm?: number; readonly mgPerM3?: number; readonly source: string };
    readonly ceiling?: { readonly ppm?: number; readonly mgPerM3?: number; readonly source: string };
    /** all there are, those of a working day first, the strictest first; `mg` is mg/m³, worked out where ppm were published */
    readonly limits: readonly (SolventLimit & { readonly mg: number })[];
  }[];
  /** sum of concentration over limit; above 1 is over */
  readonly mixtureRatio?: Interval;
  /** worst session's layer */
  readonly layer?: string;
  readonly roomKnown: boolean;
  /** air changes per hour that keep the mixture at the limit; or m³/h of fresh air where the room is unknown */
  readonly neededAirChanges?: Interval;
  readonly neededFreshAir?: Interval;
  /** where the vapour of that session comes from */
  readonly parts?: readonly {
    readonly from: 'paint' | 'preparation' | 'brushes';
    readonly solvent: string;
    readonly grams: Interval;
  }[];
  readonly assumptions: readonly Assumption[];
}

/** How one pigment of one layer stands light; years are ranges. */
export interface PermanenceEntry {
  readonly layer: string;
  readonly index: number;
  readonly pigment: Pigment;
  readonly lightfastness?: string;
  readonly source: Source;
  /** to a just noticeable fade at the plan's light; absent for class I and unlisted */
  readonly years?: Interval;
  readonly note?: string;
}

/** A usual caution and where it applies. The maker’s safety data sheet comes first. */
export interface CautionEntry {
  readonly hazard: string;
  readonly title: string;
  readonly where: readonly string[];
  readonly text: string;
  readonly source: Source;
}

/** Everything computed from a plan. */
export interface Study {
  readonly plan: Plan;
  readonly layers: readonly LayerStudy[];
  readonly areas: readonly AreaStudy[];
  /** temperature, session, light… where the plan is silent */
  readonly assumptions: readonly Assumption[];
  readonly calendar: Calendar;
  readonly quantities: Quantities | undefined;
  readonly air: Air | undefined;
  readonly permanence: readonly PermanenceEntry[];
  readonly cautions: readonly CautionEntry[];
  /**
   * What light meets beneath a layer on an area (after all layers where no index is given): internal reflectance, 400 to
   * 700 nm by 10 nm, and the upper face colours are seen through there. Undefined where nothing can be predicted. Lazy.
   */
  beneath(area: string, index?: number): State | undefined;
  /** what a painter's swatches make of a pigment: before and after, and whether they contradict each other. Lazy. */
  calibration(own: OwnPigment): Calibration;
  /** every source the study rests on, once */
  readonly sources: readonly Source[];
  readonly dataVersion: string;
}
