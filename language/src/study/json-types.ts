/**
 * The types of `study --format json`, as language/docs/study.schema.json states them. Shares and concentrations are
 * fractions of 1, lengths µm, times days, volumes ml, masses g, temperatures °C; what is not known is null. Names may be
 * added, never changed or taken away while `version` is "1".
 */

import type { Interval } from '../materials/interval.ts';
import type { Mark, Source } from '../materials/types.ts';
import type { LayerKind } from '../plan/plan.ts';
import type { Json } from '../plan/shown.ts';
import type { Assumption, Composition, Confidence, Drying, PermanenceEntry } from '../results/study.ts';
import type { Mixture, Portion } from '../studio/parts.ts';
import type { Purchase, Shopping } from '../studio/shopping.ts';
import type { Tool } from './tool.ts';

/** The film of one coat, dry, and the paint it comes from. Fractions by volume unless said; `wetDensity` g/ml. */
export interface CompositionJson extends Omit<Composition, 'pigments' | 'paintPvc'> {
  readonly pigments: readonly {
    /** name in the catalogue: `PBr7 burnt-sienna` */
    readonly id: string;
    readonly code: string | null;
    readonly variety: string | null;
    readonly volumeFraction: Interval;
    readonly massFraction: Interval;
  }[];
}

/** The colour of one area after a layer: CIELAB D65/2°, the nearest sRGB, ΔE00 radius, grounds. */
export interface ColourJson {
  readonly area: string;
  readonly lab: readonly [number, number, number];
  /** `#rrggbb` */
  readonly hex: string;
  /** true where sRGB cannot show the colour */
  readonly outOfGamut: boolean;
  readonly radius: number;
  readonly confidence: Confidence;
  readonly basis: readonly string[];
}

/** What a declaration says, by the words of its fields (`wipeOut`): null where it says that nobody knows. */
export type FieldsJson = Readonly<Record<string, Json>>;

/** One declaration besides layers and what it says; the file itself has the word `file`. */
export interface StatedJson {
  readonly word: string;
  readonly name: string | null;
  readonly fields: FieldsJson;
  /** the layers of a cross-section, from below */
  readonly layers?: readonly { readonly name: string; readonly fields: FieldsJson }[];
}

/** One layer, from below upwards. */
export interface LayerJson {
  readonly name: string;
  readonly kind: LayerKind;
  readonly areas: readonly string[];
  readonly coats: number;
  /** µm, all coats */
  readonly dryFilm: Interval | null;
  readonly composition: CompositionJson | null;
  /** days after each coat */
  readonly drying: Drying | null;
  readonly colour: readonly ColourJson[];
  readonly assumptions: readonly Assumption[];
  /** what the text says of it */
  readonly stated: FieldsJson;
}

/** One area: its colours from below upwards, and how near the last comes to a target. */
export interface AreaJson {
  readonly name: string;
  /** fraction of the support */
  readonly share: number;
  readonly buildUp: readonly {
    readonly layer: string;
    readonly lab: readonly [number, number, number];
    readonly hex: string;
    readonly outOfGamut: boolean;
    readonly radius: number;
  }[];
  readonly target: {
    readonly lab: readonly [number, number, number];
    readonly css: string;
    readonly deltaE00: number | null;
    readonly within: number;
  } | null;
}

/**
 * One coat of one layer. Dates are ISO days and null in a plan without dates; `…Day` counts from 1970-01-01 or from the
 * plan's beginning. All are null where nobody can tell when a layer at or beneath it is dry; `notKnown` says which.
 */
export interface CalendarJson {
  readonly layer: string;
  readonly coat: number;
  readonly notBefore: string | null;
  readonly likely: string | null;
  readonly safeFrom: string | null;
  readonly notBeforeDay: number | null;
  readonly likelyDay: number | null;
  readonly safeFromDay: number | null;
  readonly daysToSpare: number | null;
  readonly heldBy: { readonly layer: string; readonly area: string; readonly reason: string } | null;
  readonly painted: string | null;
  readonly notKnown: { readonly layer: string; readonly line: number; readonly column: number } | null;
}

interface Millilitres {
  readonly name: string;
  readonly ml: Interval;
}

interface Weighed extends Millilitres {
  readonly g: Interval;
}

/** What to buy and to mix, in all and for each sitting: ml and g. */
export interface QuantitiesJson {
  readonly paints: readonly Weighed[];
  readonly mediums: readonly (Millilitres & { readonly ingredients: readonly Weighed[] })[];
  /** `ml` is null for what is used by the piece, such as an abrasive pad */
  readonly agents: readonly {
    readonly name: string;
    readonly method: string;
    readonly ml: Interval | null;
    /** of that, ml that the cloth leaves on the painting */
    readonly stays?: Interval;
  }[];
  readonly sessions: readonly {
    readonly layer: string;
    readonly coat: number;
    readonly paints: readonly Millilitres[];
    readonly medium: Millilitres | null;
  }[];
  /** what to mix at each sitting, a mixture of paints an entry; `ml` without medium, `about` rounded up to what can be measured */
  readonly mixtures: readonly {
    /** number in the order of the likely days */
    readonly sitting: number;
    readonly layers: readonly string[];
    /** of the mix, where one alone is used */
    readonly name: string | null;
    /** whole parts in the order of mixing, and the share wanted; empty for medium alone */
    readonly parts: readonly Pick<Portion, 'name' | 'parts' | 'share'>[];
    /** greatest error of a share that the parts give, as a fraction of it */
    readonly off: number;
    readonly letDowns: Mixture['letDowns'];
    /** what is laid together when the let-downs are ready */
    readonly together: Mixture['together'];
    readonly ml: Interval | null;
    readonly about: number | null;
    readonly mediums: readonly {
      readonly name: string;
      readonly layers: readonly string[];
      /** of the applied volume */
      readonly share: number;
      readonly parts: { readonly paint: number; readonly medium: number };
      readonly ml: Interval | null;
      readonly about: number | null;
    }[];
  }[];
  /** tubes of `tube` ml, and what they cost where the plan says so; paint ground by hand is not in it */
  readonly shopping: {
    readonly paints: readonly (Omit<Purchase, 'cost'> & {
      readonly cost: Shopping['costs'][number] | null;
    })[];
    readonly costs: Shopping['costs'];
  };
  readonly assumptions: readonly Assumption[];
}

/** A published limit of a vapour in air. */
export interface LimitJson {
  readonly ppm: number | null;
  readonly mgPerM3: number | null;
  readonly source: string;
}

/** A published limit with whose it is and over how many hours it is an average. */
export interface LimitRowJson extends LimitJson {
  readonly whose: string;
  readonly hours: number;
  readonly mark: Mark;
}

/** Solvent vapour in the studio in the worst sitting. */
export interface AirJson {
  readonly solvents: readonly {
    readonly name: string;
    readonly grams: Interval;
    readonly ppm: Interval | null;
    readonly mgPerM3: Interval | null;
    readonly limit: LimitJson | null;
    readonly ceiling: LimitJson | null;
    /** all that are known, those of a working day first, the strictest first */
    readonly limits: readonly LimitRowJson[];
  }[];
  /** sum of concentration over limit; above 1 is over */
  readonly mixtureRatio: Interval | null;
  readonly layer: string | null;
  readonly roomKnown: boolean;
  /** per hour */
  readonly neededAirChanges: Interval | null;
  /** m³/h */
  readonly neededFreshAir: Interval | null;
  readonly assumptions: readonly Assumption[];
}

/** How a pigment of a layer stands light: its class, its source, years to a just noticeable fade. */
export interface PermanenceJson extends Pick<PermanenceEntry, 'layer' | 'source'> {
  readonly pigment: string;
  readonly lightfastness: string | null;
  readonly years: Interval | null;
  readonly note: string | null;
}

/** A usual caution. It defers to the maker's safety data sheet. */
export interface CautionJson {
  readonly hazard: string;
  readonly title: string;
  readonly where: readonly string[];
  readonly text: string;
  readonly source: Source;
}

/** Everything computed of one plan or record. `F` is a finding as `check --format json` prints it. */
export interface StudyJson<F = unknown> {
  readonly version: '1';
  readonly tool: Tool;
  readonly path: string;
  readonly kind: 'plan' | 'record' | 'palette';
  readonly title: string | null;
  /** what the text says besides its layers */
  readonly stated: readonly StatedJson[];
  readonly layers: readonly LayerJson[];
  readonly areas: readonly AreaJson[];
  readonly calendar: readonly CalendarJson[];
  readonly quantities: QuantitiesJson | null;
  readonly air: AirJson | null;
  readonly permanence: readonly PermanenceJson[];
  readonly cautions: readonly CautionJson[];
  readonly assumptions: readonly Assumption[];
  readonly findings: readonly F[];
  readonly sources: readonly Source[];
}
