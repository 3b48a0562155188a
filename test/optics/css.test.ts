import { describe, expect, test } from 'vitest';
import { lightOf, toLab } from '../../language/src/optics/cie.ts';
import { adaptToD65, cssOf, hexOf, parseColour, readCss, toScreen } from '../../language/src/optics/css.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';

describe('reading CSS Color 4', () => {
  test('sRGB primaries have their known CIELAB (D65; Lindbloom’s calculator and sRGB IEC 61966-2-1 primaries)', () => {
    // Published CIELAB of the sRGB primaries relative to D65.
    expect(deltaE00(parseColour('#ff0000')!, [53.24, 80.09, 67.2])).toBeLessThan(0.05);
    expect(deltaE00(parseColour('#00ff00')!, [87.73, -86.18, 83.18])).toBeLessThan(0.05);
    expect(deltaE00(parseColour('#0000ff')!, [32.3, 79.19, -107.86])).toBeLessThan(0.05);
  });
  test('white is white in every notation', () => {
    for (const css of [
      '#fff',
      '#ffffff',
      '#ffffffff',
      'rgb(255 255 255)',
      'lab(100 0 0)',
      'lch(100 0 0)',
      'oklab(1 0 0)',
      'oklch(1 0 0)',
      'hsl(0 0% 100%)',
      'hwb(0 100% 0%)',
      'color(srgb 1 1 1)',
      'color(xyz-d50 0.9643 1 0.8251)',
      'color(xyz-d65 0.9505 1 1.089)',
    ])
      expect(deltaE00(parseColour(css)!, [100, 0, 0]), css).toBeLessThan(0.1);
  });
  test('a grey of lab() keeps its lightness and stays grey, D50 to D65', () => {
    const [l, a, b] = parseColour('lab(58 0 0)')!;
    expect(l).toBeCloseTo(58, 3);
    expect(Math.abs(a) + Math.abs(b)).toBeLessThan(0.02);
  });
  test('`none` stands for nothing', () => expect(parseColour('lab(50 none none)')![0]).toBeCloseTo(50, 3));

  test.each([
    'red',
    'transparent',
    'currentcolor',
    '#12345',
    '#12',
    'rgb(1 2 3 / 50%)',
    '#11223344',
    'lab(50 5)',
    'lab(',
    'lab(a b c)',
    'lab(50 1e999 0)',
    'lab(50 300 300)',
    'color(nowhere 1 1 1)',
    '',
    'rgb(1 2 3) x',
    'calc(1)',
  ])('refuses %s and says what to write', (css) => {
    const reading = readCss(css);
    expect(reading).toHaveProperty('fault');
    expect((reading as { fault: string }).fault).toMatch(/#c9a24a/);
  });
});

describe('showing', () => {
  test('hex goes there and back', () => {
    for (const hex of ['#c9a24a', '#000000', '#ffffff', '#102030', '#80ff00'])
      expect(hexOf(parseColour(hex)!)).toBe(hex);
  });
  test('a colour outside sRGB says so and keeps its hue', () => {
    const shown = toScreen([60, 90, 80]);
    expect(shown.outOfGamut).toBe(true);
    expect(shown.hex).toMatch(/^#[0-9a-f]{6}$/);
    expect(toScreen([60, 10, 10]).outOfGamut).toBe(false);
  });
  test('CSS text names the same colour', () => {
    for (const lab of [
      [50, 10, -20],
      [90, -3, 40],
    ] as const)
      expect(deltaE00(parseColour(cssOf(lab))!, lab)).toBeLessThan(0.1);
  });
  test('the white of every light adapts to the white of D65', () => {
    for (const light of ['D50', 'A'] as const)
      expect(deltaE00(toLab(adaptToD65(lightOf(light).white, light)), [100, 0, 0])).toBeLessThan(1e-3);
  });
});
