/** Small made-up materials for the film tests: only the figures a film is composed from. */

import type { FilmInput, LiquidPart, PasteInput } from '../../language/src/film/input.ts';
import { exactly, type Interval } from '../../language/src/materials/interval.ts';
import type { Binder, Figure, Pigment, Solvent } from '../../language/src/materials/types.ts';

const source = { text: 'made up for a test', mark: 'assumption' } as const;
export const figure = (low: number, high = low): Figure => ({ low, high, source });

export const pigment = (id: string, density: Figure, oilAbsorption: Figure, paintOil?: Figure): Pigment => ({
  id,
  names: [id],
  composition: { value: '', source },
  density,
  oilAbsorption,
  paintOil,
  transparency: { value: 'opaque', source },
  drying: { value: 'neutral', source },
  hazards: [],
  hazardsSource: source,
  used: { words: '', source },
});

export const oil = (id = 'linseed', density = 0.935): Binder => ({
  id,
  names: [id],
  kind: 'drying oil',
  density: figure(density),
  solids: figure(1),
  touchDry: figure(3, 5),
});

export const alkyd: Binder = {
  id: 'alkyd',
  names: ['alkyd'],
  kind: 'alkyd',
  density: figure(0.9, 0.98),
  solids: figure(0.4, 0.8),
  carrier: 'white-spirit',
  touchDry: figure(0.33, 1),
};

export const spirit: Solvent = { id: 'white-spirit', names: [], density: figure(0.78), limits: [] };

export const part = (liquid: Binder | Solvent, volume: number): LiquidPart =>
  'kind' in liquid
    ? { liquid: { kind: 'binder', binder: liquid }, volume }
    : { liquid: { kind: 'solvent', solvent: liquid }, volume };

export const pasteOf = (p: Pigment, binder: Binder = oil(), stated?: Interval): PasteInput => ({
  name: p.id,
  pigments: [{ pigment: p, mass: 1 }],
  binder,
  oil: stated,
});

export const film = (
  pastes: readonly PasteInput[],
  share = 0,
  parts: readonly LiquidPart[] = [],
  dry: Interval = exactly(30),
): FilmInput => ({
  pastes: pastes.map((paste) => ({ paste, volume: 1 })),
  medium: parts.length > 0 ? { name: 'medium', parts } : undefined,
  mediumShare: exactly(share),
  dryFilm: dry,
  solvent: (id) => (id === spirit.id ? spirit : undefined),
});
