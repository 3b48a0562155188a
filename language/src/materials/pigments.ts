/** Pigments by Colour Index generic name: identity, density, oil, optics in words, drying, light, hazards, dates. */
import { figure, figureIf, type RawFigure, type RawStatement, source, statement, statementIf } from './sources.ts';
import table from './tables/pigments.json' with { type: 'json' };
import type { DryingClass, Hazard, Lightfastness, Pigment, Transparency } from './types.ts';

interface Raw {
  readonly id: string;
  readonly code?: string;
  readonly variety?: string;
  readonly byDefault?: boolean;
  readonly names: readonly string[];
  readonly constitution?: string;
  readonly composition: RawStatement;
  readonly cas?: string;
  readonly density: RawFigure;
  readonly oilAbsorption: RawFigure;
  readonly paintOil?: RawFigure;
  readonly refractiveIndex?: RawFigure;
  readonly transparency: RawStatement;
  readonly lightfastness?: RawStatement;
  readonly lightfastnessNote?: RawStatement;
  readonly drying: RawStatement;
  readonly film?: RawStatement;
  readonly hazards: readonly [readonly string[], string];
  readonly classification?: RawStatement;
  readonly used: { readonly from?: number; readonly to?: number; readonly words: string; readonly source: string };
  readonly incompatibilities?: RawStatement;
}

const read = (raw: Raw): Pigment => ({
  id: raw.id,
  code: raw.code,
  variety: raw.variety,
  byDefault: raw.byDefault,
  names: raw.names,
  constitution: raw.constitution,
  composition: statement(raw.composition),
  cas: raw.cas,
  density: figure(raw.density),
  oilAbsorption: figure(raw.oilAbsorption),
  paintOil: figureIf(raw.paintOil),
  refractiveIndex: figureIf(raw.refractiveIndex),
  transparency: statement<Transparency>(raw.transparency),
  lightfastness: statementIf<Lightfastness>(raw.lightfastness),
  lightfastnessNote: statementIf(raw.lightfastnessNote),
  drying: statement<DryingClass>(raw.drying),
  film: statementIf(raw.film),
  hazards: raw.hazards[0] as readonly Hazard[],
  hazardsSource: source(raw.hazards[1]),
  classification: statementIf(raw.classification),
  used: { ...raw.used, source: source(raw.used.source) },
  incompatibilities: statementIf(raw.incompatibilities),
});

export const pigments: readonly Pigment[] = (table as unknown as readonly Raw[]).map(read);
