/** Oils, resins, alkyd, egg, glue, gum and dispersion: what holds pigment together. */
import { figure, figureIf, type RawFigure, type RawStatement, statementIf } from './sources.ts';
import table from './tables/binders.json' with { type: 'json' };
import type { Binder, BinderKind } from './types.ts';

interface Raw {
  readonly id: string;
  readonly names: readonly string[];
  readonly kind: string;
  readonly density: RawFigure;
  readonly solids: RawFigure;
  readonly carrier?: string;
  readonly refractiveIndex?: RawFigure;
  readonly iodineValue?: RawFigure;
  readonly touchDry?: RawFigure;
  readonly yellowing?: RawStatement;
  readonly flexibility?: RawStatement;
  readonly notes?: RawStatement;
}

export const binders: readonly Binder[] = (table as unknown as readonly Raw[]).map((raw) => ({
  id: raw.id,
  names: raw.names,
  kind: raw.kind as BinderKind,
  density: figure(raw.density),
  solids: figure(raw.solids),
  carrier: raw.carrier,
  refractiveIndex: figureIf(raw.refractiveIndex),
  iodineValue: figureIf(raw.iodineValue),
  touchDry: figureIf(raw.touchDry),
  yellowing: statementIf(raw.yellowing),
  flexibility: statementIf(raw.flexibility),
  notes: statementIf(raw.notes),
}));
