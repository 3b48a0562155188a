/**
 * Colour values as text: CSS Color 4 (W3C), read and converted by colorjs.io. CSS `lab()` and `lch()` are relative to
 * D50; everything here comes out as CIELAB under D65, 2°, adapted by the linear Bradford transform CSS prescribes.
 */
import {
  A98RGB,
  A98RGB_Linear,
  ColorSpace,
  HSL,
  HWB,
  inGamut,
  Lab_D65,
  Lab as LabD50,
  LCH,
  OKLab,
  OKLCH,
  P3,
  P3_Linear,
  ProPhoto,
  ProPhoto_Linear,
  parse,
  REC_2020,
  REC_2020_Linear,
  sRGB,
  sRGB_Linear,
  to,
  toGamutCSS,
  XYZ_D50,
  XYZ_D65,
} from 'colorjs.io/fn';
import { type Lab, type Light, lightOf, type Xyz } from './cie.ts';

// Only what CSS Color 4 itself defines is registered, so that nothing else parses.
for (const space of [
  XYZ_D65,
  XYZ_D50,
  LabD50,
  LCH,
  sRGB_Linear,
  sRGB,
  HSL,
  HWB,
  OKLab,
  OKLCH,
  P3_Linear,
  P3,
  A98RGB_Linear,
  A98RGB,
  ProPhoto_Linear,
  ProPhoto,
  REC_2020_Linear,
  REC_2020,
])
  ColorSpace.register(space);

const SHAPE = /^(#[0-9a-f]{3,8}|(rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\([^()]*\))$/i;

export type CssReading = { readonly lab: Lab } | { readonly fault: string };

/**
 * Reads a CSS Color 4 value: `#c9a24a`, `rgb(…)`, `hsl(…)`, `hwb(…)`, `lab(…)`, `lch(…)`, `oklab(…)`, `oklch(…)`,
 * `color(xyz-d50 …)`. No named colours, no opacity: paint has its own. Out comes CIELAB D65/2°, or what is wrong.
 */
export function readCss(css: string): CssReading {
  const text = css.trim();
  const fault = (what: string): CssReading => ({
    fault: `${what}. Write it as CSS does: #c9a24a, lab(58 -6 -18) or oklch(0.6 0.1 250)`,
  });
  if (!SHAPE.test(text) || /^#(.{5}|.{7})$/.test(text)) return fault(`‘${clip(text)}’ is no colour value`);
  let colour: ReturnType<typeof parse>;
  try {
    colour = parse(text);
  } catch {
    return fault(`‘${clip(text)}’ is no colour value`);
  }
  if (typeof colour.alpha === 'number' && colour.alpha < 1)
    return fault('A paint colour has no opacity; the film and its pigments decide what shows through');
  // `none` reads as null and stands for 0; a component that is no number reads as NaN.
  const coords = colour.coords.map((c) => (c === null ? 0 : Number(c))) as [number, number, number];
  if (!coords.every(Number.isFinite)) return fault(`‘${clip(text)}’ is no colour value`);
  const lab = to({ spaceId: colour.spaceId ?? 'srgb', coords, alpha: 1 } as Parameters<typeof to>[0], Lab_D65)
    .coords as number[];
  const [l, a, b] = [lab[0]!, lab[1]!, lab[2]!];
  if (![l, a, b].every(Number.isFinite) || l < -0.5 || l > 100.5 || Math.hypot(a, b) > 250)
    return fault(`‘${clip(text)}’ is outside what a surface can show (lightness 0 to 100)`);
  return { lab: [Math.min(100, Math.max(0, l)), a, b] };
}

/** The colour a CSS value names, CIELAB D65/2°; undefined where it cannot be read (`readCss` says why). */
export function parseColour(css: string): Lab | undefined {
  const reading = readCss(css);
  return 'lab' in reading ? reading.lab : undefined;
}

const clip = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

export interface Screen {
  /** sRGB, `#rrggbb` */
  readonly hex: string;
  /** red, green, blue, 0 to 1 */
  readonly rgb: readonly [number, number, number];
  /** sRGB cannot show it; `hex` is the nearest of equal hue (CSS Color 4 gamut mapping) */
  readonly outOfGamut: boolean;
}

/** What a screen shows of a CIELAB D65/2° colour, and whether that is the colour itself. */
export function shown(lab: Lab): Pick<Screen, 'hex' | 'outOfGamut'> {
  const { hex, outOfGamut } = toScreen(lab);
  return { hex, outOfGamut };
}

/** The sRGB of a colour in words: `≈` before one that sRGB cannot show. */
export const screenWords = ({ hex, outOfGamut }: Pick<Screen, 'hex' | 'outOfGamut'>): string =>
  outOfGamut ? `≈${hex}` : hex;

/** What the `≈` of `screenWords` means. */
export const BEYOND_SRGB = '≈: beyond what sRGB can show, the nearest that it can.';

/** A CIELAB D65/2° colour for a screen. */
export function toScreen(lab: Lab): Screen {
  const colour = { space: Lab_D65, coords: [...lab] as [number, number, number], alpha: 1 };
  const outOfGamut = !inGamut(colour, sRGB, { epsilon: 1e-4 });
  const shown = outOfGamut ? toGamutCSS(colour, { space: sRGB }) : to(colour, sRGB);
  const rgb = (shown.coords as number[]).map((c) => Math.min(1, Math.max(0, c || 0))) as [
    number,
    number,
    number,
  ];
  const hex = `#${rgb
    .map((c) =>
      Math.round(c * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
  return { hex, rgb, outOfGamut };
}

/** sRGB hex of a CIELAB D65/2° colour, gamut mapped. */
export const hexOf = (lab: Lab): string => toScreen(lab).hex;

/** CSS text for a CIELAB D65/2° colour: `lab(…)` as CSS means it (D50), to a tenth. */
export function cssOf(lab: Lab): string {
  const colour = to({ space: Lab_D65, coords: [...lab] as [number, number, number], alpha: 1 }, LabD50);
  return `lab(${(colour.coords as number[]).map((c) => Math.round(c * 10) / 10 + 0).join(' ')})`;
}

const BRADFORD = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
] as const;

const times = (m: readonly (readonly number[])[], v: readonly number[]): number[] =>
  m.map((row) => row[0]! * v[0]! + row[1]! * v[1]! + row[2]! * v[2]!);

const INVERSE = [
  [0.9869929, -0.1470543, 0.1599627],
  [0.4323053, 0.5183603, 0.0492912],
  [-0.0085287, 0.0400428, 0.9684867],
] as const;

/**
 * XYZ seen under `light` to the XYZ that looks the same under D65 (linear Bradford adaptation), for showing colours
 * computed under another light on a screen.
 */
export function adaptToD65(xyz: Xyz, light: Light): Xyz {
  if (light === 'D65') return xyz;
  const from = times(BRADFORD, lightOf(light).white);
  const into = times(BRADFORD, lightOf('D65').white);
  const cone = times(BRADFORD, xyz).map((v, i) => (v * into[i]!) / from[i]!);
  return times(INVERSE, cone) as unknown as Xyz;
}
