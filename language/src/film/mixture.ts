/** One cm³ of paint as applied, under one choice within the tables' ranges. */
import type { Interval } from '../materials/interval.ts';
import type { Pigment } from '../materials/types.ts';
import type { FilmInput } from './input.ts';
import { at, binderLiquid, type Choice, type End, paste } from './paste.ts';

export interface Mixture {
  /** cm³ and g per cm³ of applied paint */
  readonly pigments: ReadonlyMap<Pigment, { volume: number; mass: number }>;
  /** cm³ of solid binder by binder id */
  readonly binders: ReadonlyMap<string, number>;
  /** cm³ of what evaporates, by solvent id */
  readonly volatiles: ReadonlyMap<string, number>;
  readonly pigment: number;
  readonly binder: number;
  /** of that, what came from a liquid wiped on before */
  readonly residue: number;
  /** µm of it on the coat */
  readonly residueFilm: number;
  readonly volatile: number;
  /** cm³ of binder that just fill the gaps of the pigments */
  readonly absorbed: number;
  /** g of all, and of what stays */
  readonly mass: number;
  readonly solidMass: number;
  readonly mediumShare: number;
  /** share of solids within the medium, by volume */
  readonly mediumSolids: number;
}

const pick = (x: Interval, end: End): number => (end < 0 ? x.low : end > 0 ? x.high : x.likely);
const add = (map: Map<string, number>, key: string, value: number): void => {
  if (value > 0) map.set(key, (map.get(key) ?? 0) + value);
};

export function mixture(input: FilmInput, choice: Choice): Mixture | undefined {
  const pigments = new Map<Pigment, { volume: number; mass: number }>();
  const binders = new Map<string, number>();
  const volatiles = new Map<string, number>();
  let absorbed = 0;
  let mass = 0;
  let solidMass = 0;

  const pasteVolume = input.pastes.reduce((sum, p) => sum + p.volume, 0);
  const liquidVolume = input.medium?.parts.reduce((sum, p) => sum + p.volume, 0) ?? 0;
  let m = liquidVolume > 0 ? Math.min(1, Math.max(0, pick(input.mediumShare, choice.mediumShare))) : 0;
  if (!(pasteVolume > 0)) {
    // A layer of medium alone: whatever share was written, there is nothing else in it.
    if (!(liquidVolume > 0)) return undefined;
    m = 1;
  }

  for (const { paste: recipe, volume } of input.pastes) {
    if (!(volume > 0) || !(pasteVolume > 0)) continue;
    const made = paste(recipe, choice, input.solvent);
    if (!made) return undefined;
    const share = ((1 - m) * volume) / pasteVolume;
    recipe.pigments.forEach(({ pigment }, i) => {
      const p = made.pigments[i]!;
      const sum = pigments.get(pigment) ?? { volume: 0, mass: 0 };
      sum.volume += share * p.volume;
      sum.mass += share * p.mass;
      pigments.set(pigment, sum);
      absorbed += share * p.absorbed;
    });
    add(binders, recipe.binder.id, share * made.binder);
    if (made.carrier) add(volatiles, made.carrier, share * made.volatile);
    mass += share * made.density;
    solidMass += share * (made.density - carried(made.volatile, made.carrier, input));
  }

  let mediumSolid = 0;
  for (const { liquid, volume } of input.medium?.parts ?? []) {
    if (!(volume > 0)) continue;
    const part = volume / liquidVolume;
    if (liquid.kind === 'solvent') {
      add(volatiles, liquid.solvent.id, m * part);
      mass += m * part * at(liquid.solvent.density, 0);
      continue;
    }
    const made = binderLiquid(liquid.binder, choice.solids, input.solvent);
    mediumSolid += part * made.solid;
    add(binders, liquid.binder.id, m * part * made.solid);
    if (made.carrier) add(volatiles, made.carrier, m * part * made.volatile);
    mass += m * part * made.mass;
    solidMass += m * part * (made.mass - carried(made.volatile, made.carrier, input));
  }

  let paint = 0;
  for (const p of pigments.values()) paint += p.volume;
  for (const b of binders.values()) paint += b;
  if (!(paint > 0)) return undefined;
  const stayed = wipedOn(input, choice, (id, film, density) => {
    // of the paint as applied, one cm³ covers as much as its solids do at the dry film
    const volume = (film * paint) / input.dryFilm.likely;
    add(binders, id, volume);
    solidMass += volume * density;
    return volume;
  });

  let pigment = 0;
  for (const p of pigments.values()) pigment += p.volume;
  let binder = 0;
  for (const b of binders.values()) binder += b;
  let volatile = 0;
  for (const v of volatiles.values()) volatile += v;
  return {
    pigments,
    binders,
    volatiles,
    pigment,
    binder,
    ...stayed,
    volatile,
    absorbed,
    mass,
    solidMass: Math.max(solidMass, 0),
    mediumShare: m,
    mediumSolids: mediumSolid,
  };
}

/** What stays of the liquids wiped on, put into the film by `put`: its volume there and its thickness, µm. */
function wipedOn(
  input: FilmInput,
  choice: Choice,
  put: (binder: string, film: number, density: number) => number,
): Pick<Mixture, 'residue' | 'residueFilm'> {
  let residue = 0;
  let residueFilm = 0;
  for (const { parts, film } of input.residues ?? []) {
    const whole = parts.reduce((sum, p) => sum + p.volume, 0);
    for (const { liquid, volume } of parts) {
      if (liquid.kind === 'solvent' || !(volume > 0)) continue;
      const { solid, mass } = binderLiquid(liquid.binder, choice.solids, input.solvent);
      const um = (pick(film, choice.residue) * solid * volume) / whole;
      residue += put(liquid.binder.id, um, mass);
      residueFilm += um;
    }
  }
  return { residue, residueFilm };
}

/** g of what evaporates. */
function carried(volume: number, carrier: string | undefined, input: FilmInput): number {
  if (!carrier || volume === 0) return 0;
  const solvent = input.solvent(carrier);
  return volume * (solvent ? at(solvent.density, 0) : 1);
}
