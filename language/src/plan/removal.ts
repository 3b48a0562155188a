/** What to take out of a text so that a field or a declaration is gone and leaves no trace. */
import type { Place } from './plan.ts';

const BREAK = /\r\n|\n|\r/y;

/** Offset after the line break that begins at an offset; undefined where none does. */
function afterBreak(text: string, at: number): number | undefined {
  BREAK.lastIndex = at;
  const lineBreak = BREAK.exec(text);
  return lineBreak ? at + lineBreak[0].length : undefined;
}

const isBlank = (c: string | undefined): boolean => c === ' ' || c === '\t';
const isBreak = (c: string | undefined): boolean => c === '\n' || c === '\r' || c === undefined;

/** The end of the blank line that begins at an offset, its break included; undefined where the line is not blank. */
function blankLine(text: string, at: number): number | undefined {
  let end = at;
  while (isBlank(text[end])) end++;
  return afterBreak(text, end);
}

/** Whether the line before the one that begins at an offset is blank, or there is none. */
function followsBlank(text: string, at: number): boolean {
  let before = at - (text[at - 1] === '\n' && text[at - 2] === '\r' ? 2 : 1);
  while (isBlank(text[before - 1])) before--;
  return isBreak(text[before - 1]);
}

/**
 * The place with what would be left behind: its whole line (or lines) where nothing else stands there, and one of two
 * empty lines that would meet; else the blanks on one side of it.
 */
export function removalPlace(text: string, place: Place): Place {
  let { start, end } = place;
  while (isBlank(text[start - 1])) start--;
  while (isBlank(text[end])) end++;
  if (isBreak(text[start - 1]) && isBreak(text[end])) {
    const next = afterBreak(text, end) ?? end;
    return { ...place, start, end: followsBlank(text, start) ? (blankLine(text, next) ?? next) : next };
  }
  // the blanks before it go, or those after it where it is the first on its line or in its block
  return isBreak(text[start - 1]) || text[start - 1] === '{' ? { ...place, end } : { ...place, start };
}
