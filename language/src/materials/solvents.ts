/** Solvents with what is published of their vapour and its limits. */
import { figure, figureIf, type RawFigure, type RawStatement, source, statementIf } from './sources.ts';
import table from './tables/solvents.json' with { type: 'json' };
import type { Solvent, SolventLimit } from './types.ts';

interface RawLimit {
  readonly whose: string;
  readonly hours: number;
  readonly ppm?: number;
  readonly mgPerM3?: number;
  readonly source: string;
}

interface Raw {
  readonly id: string;
  readonly names: readonly string[];
  readonly cas?: string;
  readonly density: RawFigure;
  readonly molarMass?: RawFigure;
  readonly boiling?: RawFigure;
  readonly vapourPressure?: RawFigure;
  readonly evaporationRate?: RawFigure;
  readonly flashPoint?: RawFigure;
  readonly limits: readonly RawLimit[];
  readonly idlh?: RawStatement;
  readonly odour?: RawStatement;
  readonly classification?: RawStatement;
  readonly notes?: RawStatement;
  readonly harmless?: boolean;
}

const limit = (raw: RawLimit): SolventLimit => ({ ...raw, source: source(raw.source) });

export const solvents: readonly Solvent[] = (table as unknown as readonly Raw[]).map((raw) => ({
  id: raw.id,
  names: raw.names,
  cas: raw.cas,
  density: figure(raw.density),
  molarMass: figureIf(raw.molarMass),
  boiling: figureIf(raw.boiling),
  vapourPressure: figureIf(raw.vapourPressure),
  evaporationRate: figureIf(raw.evaporationRate),
  flashPoint: figureIf(raw.flashPoint),
  limits: raw.limits.map(limit),
  idlh: statementIf(raw.idlh),
  odour: statementIf(raw.odour),
  classification: statementIf(raw.classification),
  notes: statementIf(raw.notes),
  harmless: raw.harmless,
}));
