/** What a bundle holds of `pack.ts`: the way back from packed data. */

/** Stretches are written as the characters from the first to before the last; two bytes each as UTF-8. */
export const FIRST = 0x100;
export const LAST = 0x590;

/** The text that `pack` was given. A stretch, one a line, may hold those before it. */
export function unpack({ text, stretches }: { readonly text: string; readonly stretches: string }): string {
  const known: string[] = [];
  const whole = (packed: string): string =>
    packed.replace(/[\u0100-\u058f]/g, (c) => known[c.charCodeAt(0) - FIRST] as string);
  for (const stretch of stretches.split('\n')) known.push(whole(stretch));
  return whole(text);
}

/** What a curve is written in; a number is a digit less `HALF`. No quote and no backslash is among them, nor `WIDE`. */
export const DIGITS = Array.from({ length: 91 }, (_, i) => String.fromCharCode(i + 35))
  .join('')
  .replace('\\', '~');
export const HALF = 45;
/** Before a number of two digits. */
export const WIDE = '!';

/** The curve that `packCurve` was given. */
export function unpackCurve(packed: string): number[] {
  let [step, value] = [0, 0];
  return (packed.match(/!..|./g) ?? []).map((digits) => {
    const [low, high] = [DIGITS.indexOf(digits.at(-1) as string), DIGITS.indexOf(digits.at(-2) ?? '')];
    step += digits.length > 1 ? high * DIGITS.length + low - HALF * DIGITS.length : low - HALF;
    value += step;
    return value;
  });
}
