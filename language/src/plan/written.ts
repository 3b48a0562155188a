/** What stands in a text, where: places, figures, days, colours, and the faults met while reading them. */
import type { Interval } from '../materials/interval.ts';

/** A stretch of a file, as UTF-16 offsets; `end` is exclusive. */
export interface Place {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
}

/** How grave a finding is: a slip or a step not to be taken, a risk, worth knowing, a small remark. */
export type Severity = 'error' | 'warning' | 'info' | 'hint';

/** A fault met while reading the text, before any rule runs: syntax, or a value that cannot be read. */
export interface Problem {
  /** `syntax`, or the id of the rule whose words describe it (`mixed-amounts`, `repeated-field`, …). */
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly related?: readonly { readonly message: string; readonly place: Place }[];
  readonly fixes?: readonly Fix[];
}

/** An editor action: replaces stretches of text. Edits of one fix never overlap. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly { readonly place: Place; readonly text: string }[];
}

/** A word that names something declared or catalogued, where it stands. */
export interface NameUse {
  readonly name: string;
  readonly place: Place;
}

/** A figure as written. An exact figure has low = likely = high. */
export interface Measure {
  readonly value: Interval;
  /** `exact`: one number; `range`: a..b; `word`: wash, veil, thin, full, impasto; `unknown` (records): value is then a default to be flagged. */
  readonly given: 'exact' | 'range' | 'word' | 'unknown';
  /** unit of `value`: µm, days, °C, fraction, … (already converted) */
  readonly unit: string;
  /** as written, for messages: `8 µm`, `thin` */
  readonly words: string;
  readonly place: Place;
}

/** A film: its thickness, or what it is to do, for which the study finds the thickness. */
export interface FilmMeasure extends Measure {
  readonly effect?: Effect;
}

/** `to lightness 60 in sky`: the L* wanted of the finished layer, there or in the darkest of its areas. */
export interface Effect {
  readonly lightness: Measure;
  readonly in?: NameUse & { readonly areas: readonly string[] };
  /** how it was solved; absent in the Plan, and where no colour can be predicted */
  readonly found?: EffectFound;
}

/** Where a film was solved for, L* beneath it and with it, and whether that is what is wanted. */
export interface EffectFound {
  readonly area: string;
  readonly beneath: number;
  readonly lightness: number;
  readonly reached: boolean;
}

/** A calendar day: ISO text and days since 1970-01-01. Impossible dates never get here (they are a Problem). */
export interface Day {
  readonly iso: string;
  readonly number: number;
  readonly place: Place;
}

/** Years, inclusive; `made 1640..1660`, `made 1655`. */
export interface YearRange {
  readonly from: number;
  readonly to: number;
  readonly place: Place;
}

/** A CSS Color 4 value as written. The colour room reads it; `valid` says whether it could be read. */
export interface ColourValue {
  readonly css: string;
  readonly place: Place;
  readonly valid: boolean;
}

/** Words between quotes. */
export interface Quoted {
  readonly text: string;
  readonly place: Place;
}

/** One of a few words. */
export interface Chosen<T extends string = string> {
  readonly value: T;
  readonly place: Place;
}

/** Light on the finished painting: lux, hours a year. */
export interface Light {
  readonly lux: Measure;
  readonly hoursPerYear?: Measure;
  readonly place: Place;
}
