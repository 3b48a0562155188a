/** Formulas in words, and their amounts as whole percentages: the same in hovers, reports, rules and rewrites. */
import type { Formula, Paint } from './plan.ts';

/** `2 burnt-sienna + 1 PBr7 raw-umber`, as the text says it. */
export const formulaWords = (f: Formula | undefined): string =>
  f?.parts
    .map(({ amount, ingredient: { name, variety } }) => {
      const much = amount ? `${amount.value}${amount.kind === 'parts' ? '' : ` ${amount.kind}`} ` : '';
      return `${much}${name}${variety ? ` ${variety.name}` : ''}`;
    })
    .join(' + ') ?? '';

/** What a paint is made of: `9 PW6 + 1 PY42 in safflower`, `unknown in oil`. */
export function paintWords(paint: Paint): string {
  const made = paint.unknown ? 'unknown' : formulaWords(paint.formula) || 'nothing yet';
  return paint.binder || !paint.unknown ? `${made} in ${paint.binder?.name ?? 'no binder yet'}` : made;
}

/** Whole percentages nearest to some amounts that add up to exactly 100, the largest remainders rounded up. */
export function percentages(amounts: readonly number[]): number[] {
  const sum = amounts.reduce((a, b) => a + b, 0);
  const exact = amounts.map((a) => (a / sum) * 100);
  const whole = exact.map(Math.floor);
  let left = 100 - whole.reduce((a, b) => a + b, 0);
  const order = exact
    .map((e, i) => [e - Math.floor(e), i] as const)
    .sort((a, b) => b[0] - a[0] || a[1] - b[1]);
  for (const [, i] of order) if (left-- > 0) whole[i] = (whole[i] as number) + 1;
  return whole;
}
