/** Optical data of a painter's own pigments: the catalogue's, moved by the swatches they measured. */

import type { Pigment } from '../materials/types.ts';
import { type OpticalData, opticalData } from '../optics/data.ts';
import type { OwnPigment } from '../plan/plan.ts';

/** Undefined where neither the pigment it is like nor its swatches are known. */
export function ownOptics(own: OwnPigment, pigment: Pigment): OpticalData | undefined {
  const like = own.like?.is.kind === 'pigment' ? own.like.is.pigment.id : pigment.id;
  return opticalData(like);
}
