/** The inside of a paste and of a liquid under one set of choices within the tables' ranges. */
import { usualPaste } from '../materials/pastes.ts';
import type { Binder, Figure, Pigment, Solvent } from '../materials/types.ts';
import { absorbedVolume } from './cpvc.ts';
import type { PasteInput } from './input.ts';

/** Which end of the tables' ranges is looked at: −1 low, 0 the middle, 1 high. */
export type End = -1 | 0 | 1;

/** One consistent reading of everything that is uncertain. */
export interface Choice {
  readonly oilAbsorption: End;
  /** how wet the pastes are ground */
  readonly stiffness: End;
  /** how much solid an alkyd and the like carry */
  readonly solids: End;
  readonly mediumShare: End;
  /** how well a liquid that was wiped on is wiped off again */
  readonly residue: End;
}

export const at = (figure: Figure, end: End): number =>
  end === 0 ? (figure.low + figure.high) / 2 : end < 0 ? figure.low : figure.high;

/**
 * Oil of an unstated paste as a multiple of the oil absorption, by the pigment's family. Handbooks' workable paint may
 * want more than the family's softest paste; it is measured against the high oil absorption, so that one pigment's
 * hunger is not counted twice.
 */
export function pasteFactor(pigment: Pigment, end: End): number {
  const { low, likely, high } = pigment.paste ?? usualPaste;
  if (end < 0) return low;
  if (end === 0) return likely;
  const demand = pigment.paintOil ? pigment.paintOil.high / pigment.oilAbsorption.high : 0;
  return Math.max(high, demand);
}

const usable = (value: number, otherwise: number): number =>
  Number.isFinite(value) && value > 0 ? value : otherwise;

/** Solid and volatile volume in one cm³ of a binder as sold, and its mass in g. */
export interface Liquid {
  readonly solid: number;
  readonly volatile: number;
  readonly mass: number;
  /** id of what evaporates */
  readonly carrier?: string;
}

export function binderLiquid(binder: Binder, end: End, solvent: (id: string) => Solvent | undefined): Liquid {
  const mass = at(binder.density, 0);
  const solids = Math.min(1, Math.max(0, at(binder.solids, end)));
  if (solids >= 1) return { solid: 1, volatile: 0, mass };
  const carrier = binder.carrier ?? 'water';
  const carried = solvent(carrier);
  // Volumes are taken to add up, which is true of resin in spirit to a few per cent.
  const volatile = Math.min(1, ((1 - solids) * mass) / usable(carried ? at(carried.density, 0) : 1, 1));
  return { solid: 1 - volatile, volatile, mass, carrier };
}

/** One cm³ of paste. */
export interface Paste {
  /** cm³ and g, in the order of the input's pigments */
  readonly pigments: readonly { readonly volume: number; readonly mass: number; readonly absorbed: number }[];
  readonly binder: number;
  readonly volatile: number;
  readonly carrier?: string;
  /** g/cm³ */
  readonly density: number;
}

/** A paste under a choice; undefined where it holds neither pigment nor binder. */
export function paste(
  input: PasteInput,
  choice: Choice,
  solvent: (id: string) => Solvent | undefined,
): Paste | undefined {
  const liquid = binderLiquid(input.binder, choice.solids, solvent);
  let mass = 0;
  let volume = 0;
  let wanted = 0;
  const pigments = input.pigments.map((p) => {
    const v = p.mass / at(p.pigment.density, 0);
    const absorbed = p.mass * absorbedVolume(at(p.pigment.oilAbsorption, choice.oilAbsorption));
    mass += p.mass;
    volume += v;
    wanted += absorbed * pasteFactor(p.pigment, choice.stiffness);
    return { volume: v, mass: p.mass, absorbed };
  });
  // cm³ of binder as sold: what is stated, else enough of it for its solids to fill the wanted volume.
  let sold = wanted / usable(liquid.solid, 1);
  if (input.oil) {
    const end = choice.stiffness;
    const w = end < 0 ? input.oil.low : end > 0 ? input.oil.high : input.oil.likely;
    const share = Math.min(0.99, Math.max(0, w));
    sold = (mass * share) / (1 - share) / liquid.mass;
  }
  const total = volume + sold;
  if (!(total > 0) || !Number.isFinite(total)) return undefined;
  return {
    pigments: pigments.map((p) => ({
      volume: p.volume / total,
      mass: p.mass / total,
      absorbed: p.absorbed / total,
    })),
    binder: (sold * liquid.solid) / total,
    volatile: (sold * liquid.volatile) / total,
    carrier: liquid.carrier,
    density: (mass + sold * liquid.mass) / total,
  };
}

/** The middle of every range. */
export const MIDDLE: Choice = { oilAbsorption: 0, stiffness: 0, solids: 0, mediumShare: 0, residue: 0 };
