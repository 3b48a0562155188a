/**
 * CIEDE2000 colour difference (ISO/CIE 11664-6), kL = kC = kH = 1. Tested on the 34 pairs of Sharma, Wu and Dalal
 * (Color Res. Appl. 30 (2005) 21). Ours because matching evaluates it some hundred thousand times.
 */
import type { Lab } from './cie.ts';

const DEGREE = Math.PI / 180;
const POW25_7 = 25 ** 7;

/** ΔE00 of two CIELAB colours. 1 is about the least a trained eye sees side by side. */
export function deltaE00(one: Lab, two: Lab): number {
  return deltaE00Of(one[0], one[1], one[2], two[0], two[1], two[2]);
}

/** The same on bare numbers, for loops that must not allocate. */
export function deltaE00Of(l1: number, a1: number, b1: number, l2: number, a2: number, b2: number): number {
  const c7 = ((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2) ** 7;
  const g = 1 + 0.5 * (1 - Math.sqrt(c7 / (c7 + POW25_7)));
  const x1 = g * a1;
  const x2 = g * a2;
  const ch1 = Math.sqrt(x1 * x1 + b1 * b1);
  const ch2 = Math.sqrt(x2 * x2 + b2 * b2);
  const h1 = hue(x1, b1);
  const h2 = hue(x2, b2);

  const dL = l2 - l1;
  const dC = ch2 - ch1;
  const grey = ch1 * ch2 === 0;
  let dh = grey ? 0 : h2 - h1;
  if (dh > 180) dh -= 360;
  else if (dh < -180) dh += 360;
  const dH = 2 * Math.sqrt(ch1 * ch2) * Math.sin((dh / 2) * DEGREE);

  const l = (l1 + l2) / 2;
  const c = (ch1 + ch2) / 2;
  let h = h1 + h2;
  if (!grey) h = Math.abs(h1 - h2) <= 180 ? h / 2 : h < 360 ? (h + 360) / 2 : (h - 360) / 2;

  const t =
    1 -
    0.17 * Math.cos((h - 30) * DEGREE) +
    0.24 * Math.cos(2 * h * DEGREE) +
    0.32 * Math.cos((3 * h + 6) * DEGREE) -
    0.2 * Math.cos((4 * h - 63) * DEGREE);
  const l50 = (l - 50) ** 2;
  const sL = 1 + (0.015 * l50) / Math.sqrt(20 + l50);
  const sC = 1 + 0.045 * c;
  const sH = 1 + 0.015 * c * t;
  const cc7 = c ** 7;
  const rC = 2 * Math.sqrt(cc7 / (cc7 + POW25_7));
  const rT = -Math.sin(60 * Math.exp(-(((h - 275) / 25) ** 2)) * DEGREE) * rC;
  const [dl, dc, dhh] = [dL / sL, dC / sC, dH / sH];
  return Math.sqrt(Math.max(0, dl * dl + dc * dc + dhh * dhh + rT * dc * dhh));
}

/** degrees, 0 to 360 */
function hue(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const h = Math.atan2(b, a) / DEGREE;
  return h < 0 ? h + 360 : h;
}
