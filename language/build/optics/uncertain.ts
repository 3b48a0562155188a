/**
 * What an unsure strength does to a colour: the mean ΔE00 over a tint (1 part in 10 of lead white, opaque) and a glaze
 * (10 µm at 15 % pigment over a white ground) when the pigment is taken half as strong again as it is, or as weak.
 */
import { toLab, toXyz } from '../../src/optics/cie.ts';
import { deltaE00 } from '../../src/optics/difference.ts';
import { endless, filmOverGround } from '../../src/optics/transport.ts';
import { BANDS } from '../../src/optics/wavelengths.ts';
import { mean } from './evaluate.ts';
import type { Derived } from './table.ts';

type Pair = Pick<Derived, 'a' | 's'>;

/** `factor`: by how much (times or divided) the strength may be off. */
export function strengthResidual(pigment: Pair, white: Pair, factor: number): number {
  const look = (band: (b: number) => number) =>
    toLab(toXyz(Float64Array.from({ length: BANDS }, (_, b) => band(b))));
  const tint = (f: number) =>
    look((b) =>
      endless(0.1 * f * pigment.a[b]! + 0.9 * white.a[b]!, 0.1 * f * pigment.s[b]! + 0.9 * white.s[b]!),
    );
  const glaze = (f: number) =>
    look((b) => filmOverGround(1.5 * f * pigment.a[b]!, 1.5 * f * pigment.s[b]!, 0.85));
  return mean([tint, glaze].flatMap((look) => [factor, 1 / factor].map((f) => deltaE00(look(1), look(f)))));
}
