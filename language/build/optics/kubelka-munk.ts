/**
 * The model of Kubelka and Munk (Z. techn. Physik 12 (1931) 593) with Saunderson's correction (JOSA 32 (1942) 727): every
 * path through a film counted as diffuse. Kept for comparison only; the tool's own is `src/optics/transport.ts`.
 */
import { GLOSS, outward } from '../../src/optics/surface.ts';

/** Light that leaves a film of K·X and S·X over an internal reflectance, mirrored light left out. */
export function kubelkaMunk(k: number, s: number, ground: number): number {
  const z = Math.sqrt(k * (k + 2 * s));
  const t = z < 1e-4 ? 1 - (z * z) / 3 : Math.tanh(z) / z;
  return outward((ground + t * (s - (k + s) * ground)) / (1 + t * (k + s - s * ground)), GLOSS);
}
