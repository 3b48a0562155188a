/** What a film is composed from: plain shares and the materials they are shares of. Nothing here knows a plan. */
import type { Interval } from '../materials/interval.ts';
import type { Binder, Pigment, Solvent } from '../materials/types.ts';

/** A paint as it comes from tube or slab: pigments by mass in one binder. */
export interface PasteInput {
  readonly name: string;
  /** shares of the pigment mass; any positive numbers, only their ratio counts */
  readonly pigments: readonly { readonly pigment: Pigment; readonly mass: number }[];
  readonly binder: Binder;
  /** Binder as sold, share of the paste's mass, where the painter states it; else it follows from oil absorption. */
  readonly oil?: Interval;
}

/** One liquid of a medium, by volume as sold. */
export interface LiquidPart {
  readonly liquid:
    | { readonly kind: 'binder'; readonly binder: Binder }
    | { readonly kind: 'solvent'; readonly solvent: Solvent };
  readonly volume: number;
}

export interface FilmInput {
  /** Pastes by volume; only the ratio of the volumes counts. */
  readonly pastes: readonly { readonly paste: PasteInput; readonly volume: number }[];
  readonly medium?: { readonly name: string; readonly parts: readonly LiquidPart[] };
  /** share of the medium in the applied volume, 0 to 1 */
  readonly mediumShare: Interval;
  /** µm dry, per coat */
  readonly dryFilm: Interval;
  /** what stays of liquids wiped on before each coat: each as poured, µm */
  readonly residues?: readonly { readonly parts: readonly LiquidPart[]; readonly film: Interval }[];
  /** solvents by id, for the density of what evaporates from a binder (`Binder.carrier`) */
  readonly solvent: (id: string) => Solvent | undefined;
}
