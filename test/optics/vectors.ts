/**
 * Films worked out by full radiative transfer (discrete ordinates, 64 streams; the project's own): n = 1.5, light at 8°,
 * all directions out, mirrored light left out. Each row also tells what coarser models give.
 */
import { toLab, toXyz } from '../../language/src/optics/cie.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import { plate } from '../../language/src/optics/plate.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { lambert, lay, leaving } from '../../language/src/optics/transport.ts';
import { flat } from '../../language/src/optics/wavelengths.ts';
import { table } from './files.ts';

export interface Vector {
  readonly regime: string;
  /** absorption and scattering times thickness: of the upper film, and of the one beneath where there are two */
  readonly films: readonly (readonly [a: number, s: number])[];
  /** internal reflectance of the ground */
  readonly ground: number;
  readonly reflectance: number;
  /** by quadrature, where nothing scatters */
  readonly analytic: number | undefined;
  /** by two cones that cannot leave, one that can, and the beam: by another program, to six digits */
  readonly cones: number;
  /** by Kubelka and Munk, K = 2a and S = 0.75 s, with Saunderson's correction */
  readonly kubelkaMunk: number;
}

export const vectors = (): Vector[] =>
  table('film-vectors.csv').map((row) => ({
    regime: row.regime!,
    films: [
      [Number(row.a), Number(row.s)] as const,
      ...(row.a_lower ? [[Number(row.a_lower), Number(row.s_lower)] as const] : []),
    ],
    ground: Number(row.Rg),
    reflectance: Number(row.R),
    analytic: row.R_analytic ? Number(row.R_analytic) : undefined,
    cones: Number(row.R_c21),
    kubelkaMunk: Number(row.R_km),
  }));

/** What the tool's model makes of a row. */
export function modelled({ films, ground }: Vector): number {
  const stack = lambert(flat(ground));
  for (const [a, s] of [...films].reverse()) lay(plate(flat(a), flat(s)), stack, stack);
  return leaving(stack, GLOSS)[0]!;
}

/** ΔE00 (D65, 2°) between flat greys of these reflectances. */
export const greys = (one: number, two: number): number =>
  deltaE00(toLab(toXyz(flat(one))), toLab(toXyz(flat(two))));
