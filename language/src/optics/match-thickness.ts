/** How thick a film of one given glaze must be, or how many coats of it, to come nearest a colour. */
import type { Lab, Light } from './cie.ts';
import { shown } from './css.ts';
import { deltaE00 } from './difference.ts';
import { type Limit, limitOf } from './match-limit.ts';
import { type FilmPigment, layOn, toColour } from './stack.ts';
import type { Surface } from './surface.ts';
import { newStack, type Stack } from './transport.ts';

export interface ThicknessRequest {
  readonly target: Lab;
  readonly pigments: readonly FilmPigment[];
  readonly below: Stack;
  readonly face: Surface;
  readonly light?: Light;
  /** ΔE00 that counts as reached; 2 unless said */
  readonly within?: number;
}

/**
 * The thickness (µm) at which a given film comes nearest to a colour, and the colour it then has (CIELAB, sRGB; ΔE00
 * from the one wanted).
 */
export interface ThicknessMatch {
  /** µm, dry, in all */
  readonly thickness: number;
  readonly coats?: number;
  readonly lab: Lab;
  readonly hex: string;
  /** sRGB cannot show it; `hex` is the nearest */
  readonly outOfGamut: boolean;
  readonly deltaE00: number;
  readonly reachable: boolean;
  readonly limit?: Limit;
}

const [THINNEST, THICKEST] = [0.5, 300];
const MOST_COATS = 12;

const look = (request: ThicknessRequest, thickness: number, out: Stack): Lab =>
  toColour(layOn({ pigments: request.pigments, thickness }, request.below, out), request.face, request.light)
    .lab;

function outcome(request: ThicknessRequest, thickness: number, coats?: number): ThicknessMatch {
  const lab = look(request, thickness, newStack());
  const off = deltaE00(request.target, lab);
  const reachable = off <= (request.within ?? 2);
  return {
    thickness,
    ...(coats === undefined ? {} : { coats }),
    lab,
    ...shown(lab),
    deltaE00: off,
    reachable,
    ...(reachable
      ? {}
      : { limit: limitOf(request.target, lab, toColour(request.below, request.face, request.light).lab) }),
  };
}

/** The dry film, 0.5 to 300 µm, that comes nearest the target: a scan by steps of 6 %, then finer around the best. */
export function matchThickness(request: ThicknessRequest): ThicknessMatch {
  const out = newStack();
  const off = (x: number): number => deltaE00(request.target, look(request, x, out));
  let best = THINNEST;
  let least = off(best);
  const consider = (x: number): void => {
    if (x < THINNEST || x > THICKEST) return;
    const there = off(x);
    if (there < least) [best, least] = [x, there];
  };
  for (let x = THINNEST; x <= THICKEST; x *= 1.06) consider(x);
  for (let step = 1.03; step > 1.0005; step = 1 + (step - 1) / 2) {
    const at = best;
    consider(at * step);
    consider(at / step);
  }
  return outcome(request, best);
}

/** The number of coats, 1 to 12, of `perCoat` µm each that comes nearest the target. */
export function matchCoats(request: ThicknessRequest, perCoat: number): ThicknessMatch {
  const out = newStack();
  let best = 1;
  let least = Number.POSITIVE_INFINITY;
  for (let coats = 1; coats <= MOST_COATS; coats++) {
    const there = deltaE00(request.target, look(request, perCoat * coats, out));
    if (there < least - 1e-9) [best, least] = [coats, there];
  }
  return outcome(request, perCoat * best, best);
}
