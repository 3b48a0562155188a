/** The shape of a text: what can be folded, and what a growing selection takes in. */
import { scan } from '../syntax/scan.ts';

export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** Blocks that span lines. */
export const folds = (text: string): Stretch[] =>
  scan(text).flatMap((c) =>
    c.open !== undefined && c.close !== undefined && /[\r\n]/.test(text.slice(c.open, c.close))
      ? [{ start: c.start, end: c.close }]
      : [],
  );

/** From the word under an offset outwards: word, field, inside of the braces, declaration, file. */
export function selection(text: string, offset: number): Stretch[] {
  const at = Math.max(0, Math.min(offset, text.length));
  const stretches: Stretch[] = [{ start: 0, end: text.length }];
  const chunk = scan(text).find((c) => c.start <= at && at <= c.end);
  if (chunk) {
    stretches.push({ start: chunk.start, end: chunk.end });
    if (chunk.open !== undefined && chunk.close !== undefined && chunk.open < at && at <= chunk.close) {
      stretches.push({ start: chunk.open + 1, end: chunk.close });
      const i = chunk.fields.findLastIndex((f) => f <= at);
      const start = chunk.fields[i];
      if (start !== undefined) {
        const end = start + text.slice(start, chunk.fields[i + 1] ?? chunk.close).trimEnd().length;
        if (at <= end) stretches.push({ start, end });
      }
    }
  }
  const word = /[^\s{}=+,"]*$/.exec(text.slice(Math.max(0, at - 200), at))?.[0] ?? '';
  const rest = /^[^\s{}=+,"]*/.exec(text.slice(at, at + 200))?.[0] ?? '';
  if (word || rest) stretches.push({ start: at - word.length, end: at + rest.length });
  const inner = stretches.reverse();
  return inner.filter(
    (s, i) => i === 0 || s.start < (inner[i - 1] as Stretch).start || s.end > (inner[i - 1] as Stretch).end,
  );
}
