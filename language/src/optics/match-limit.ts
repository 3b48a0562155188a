/** Why a target cannot be reached: which way the nearest colour falls short. */
import type { Lab } from './cie.ts';

/** Why a colour cannot be reached. */
export interface Limit {
  readonly kind: 'too-light' | 'too-dark' | 'too-chromatic' | 'too-grey' | 'hue';
  /** in words fit to be shown */
  readonly text: string;
}

const chroma = (lab: Lab): number => Math.hypot(lab[1], lab[2]);

/**
 * `best` is the nearest colour found, `bare` the colour of what lies beneath; `strained` says that the best recipe is
 * already at the smallest share whole parts can write.
 */
export function limitOf(target: Lab, best: Lab, bare: Lab, strained = false): Limit {
  const limit = fallsShort(target, best, bare);
  return strained
    ? {
        ...limit,
        text: `${limit.text} The strongest colour here is already at 1 part in 20: let it down with white or medium first.`,
      }
    : limit;
}

function fallsShort(target: Lab, best: Lab, bare: Lab): Limit {
  const dl = target[0] - best[0];
  const dc = chroma(target) - chroma(best);
  const mean = Math.sqrt(chroma(target) * chroma(best));
  const turn =
    chroma(target) < 2 || chroma(best) < 2
      ? 0
      : Math.atan2(target[1] * best[2] - target[2] * best[1], target[1] * best[1] + target[2] * best[2]);
  const dh = 2 * mean * Math.sin(Math.abs(turn) / 2);
  // Steps as the eye weighs them: chroma and hue count less far from grey (CIEDE2000's own factors, without its finer terms).
  const steps = {
    l: Math.abs(dl),
    c: Math.abs(dc) / (1 + 0.045 * chroma(target)),
    h: dh / (1 + 0.015 * chroma(target)),
  };
  if (steps.l >= steps.c && steps.l >= steps.h) {
    if (dl < 0)
      return {
        kind: 'too-dark',
        text: 'The target is darker than these paints get in this film; a thicker film or a stronger dark paint would reach further.',
      };
    return target[0] > bare[0] + 1
      ? {
          kind: 'too-light',
          text: 'The target is lighter than what lies beneath, and this film does not cover it; it wants a lighter layer below, or body colour.',
        }
      : {
          kind: 'too-light',
          text: 'The target is lighter than these paints leave it; a thinner film, more medium or more white would reach further.',
        };
  }
  if (steps.h > steps.c)
    return { kind: 'hue', text: 'None of these paints, alone or mixed, has the hue of the target here.' };
  return dc > 0
    ? {
        kind: 'too-chromatic',
        text: 'The target is more chromatic than these paints get here; a purer pigment, or a glaze over a lighter ground, would reach further.',
      }
    : {
        kind: 'too-grey',
        text: 'The target is greyer than these paints get here; a complementary or a black is missing.',
      };
}
