/** Pigments by Colour Index generic name: identity, density, oil, optics in words, drying, light, hazards, dates. */
import { pasteRule } from './pastes.ts';
import {
  figure,
  figureIf,
  type RawFigure,
  type RawStatement,
  source,
  statement,
  statementIf,
} from './sources.ts';
import table from './tables/pigments.json' with { type: 'json' };
import type { Dates, DryingClass, Elements, Hazard, Lightfastness, Pigment, Transparency } from './types.ts';

interface Raw {
  readonly id: string;
  /** only where the bare code may also be written with its variety */
  readonly variety?: string;
  readonly names: readonly string[];
  readonly constitution?: string;
  readonly composition: RawStatement;
  /** symbols parted by spaces */
  readonly elements?: readonly [sure: string, beside: string, trace: string, source: string];
  readonly cas?: string;
  readonly density: RawFigure;
  readonly oilAbsorption: RawFigure;
  readonly paintOil?: RawFigure;
  readonly paintOilAlso?: RawFigure;
  readonly refractiveIndex?: RawFigure;
  readonly transparency: RawStatement;
  readonly lightfastness?: RawStatement;
  readonly lightfastnessNote?: RawStatement;
  readonly light?: readonly RawStatement[];
  readonly drying: RawStatement;
  readonly film?: RawStatement;
  readonly hazards: readonly [readonly string[], string];
  readonly classification?: RawStatement;
  readonly used: readonly [words: string, source: string, from?: number | null, to?: number];
  readonly dates?: Readonly<Partial<Record<keyof Dates, readonly [year: number, source: string]>>>;
  readonly incompatibilities?: RawStatement;
}

const CODE = /^[PN](?:Bk|Br|[YORVBGW])\d+(?::\d+)?$/;

/** `PBr7 raw-umber` tells code and variety; a bare code is what the code means by itself; other ids are trade names. */
function identity({ id, variety }: Raw): Pick<Pigment, 'code' | 'variety' | 'byDefault'> {
  const [code = id, second] = id.split(' ');
  if (!CODE.test(code)) return {};
  return second === undefined ? { code, variety, byDefault: true } : { code, variety: second };
}

const symbols = (words: string): readonly string[] => words.split(' ').filter(Boolean);

const elements = (raw: Raw['elements']): Elements | undefined =>
  raw && { sure: symbols(raw[0]), beside: symbols(raw[1]), trace: symbols(raw[2]), source: source(raw[3]) };

const dates = (raw: Raw['dates']): Dates | undefined =>
  raw &&
  Object.fromEntries(Object.entries(raw).map(([what, [year, id]]) => [what, { year, source: source(id) }]));

const read = (raw: Raw): Pigment => ({
  id: raw.id,
  ...identity(raw),
  names: raw.names,
  constitution: raw.constitution,
  composition: statement(raw.composition),
  elements: elements(raw.elements),
  cas: raw.cas,
  density: figure(raw.density),
  oilAbsorption: figure(raw.oilAbsorption),
  paintOil: figureIf(raw.paintOil),
  paintOilAlso: figureIf(raw.paintOilAlso),
  paste: pasteRule(raw.id),
  refractiveIndex: figureIf(raw.refractiveIndex),
  transparency: statement<Transparency>(raw.transparency),
  lightfastness: statementIf<Lightfastness>(raw.lightfastness),
  lightfastnessNote: statementIf(raw.lightfastnessNote),
  light: raw.light?.map((said) => statement(said)),
  drying: statement<DryingClass>(raw.drying),
  film: statementIf(raw.film),
  hazards: raw.hazards[0] as readonly Hazard[],
  hazardsSource: source(raw.hazards[1]),
  classification: statementIf(raw.classification),
  used: { words: raw.used[0], source: source(raw.used[1]), from: raw.used[2] ?? undefined, to: raw.used[3] },
  dates: dates(raw.dates),
  incompatibilities: statementIf(raw.incompatibilities),
});

export const pigments: readonly Pigment[] = (table as unknown as readonly Raw[]).map(read);
