/** What the readers of single declarations share: where they are, what went wrong, what names mean. */
import type { AstNode } from 'langium';
import type { Dated, Named, Text, Years } from '../../generated/ast.ts';
import type { Day, Fix, NameUse, Place, Problem, Severity, YearRange } from './plan.ts';

/** One declaration's reading: the chunk's offset in the file plus a piece's offset in the chunk. */
export interface At {
  readonly uri: string;
  readonly offset: number;
  /** index of the layer that is read */
  readonly layer?: number;
}

export interface Context {
  readonly uri: string;
  readonly problems: Problem[];
}

export const placeOf = (node: AstNode | undefined, at: At): Place => {
  const cst = node?.$cstNode;
  return { uri: at.uri, start: at.offset + (cst?.offset ?? 0), end: at.offset + (cst?.end ?? 0) };
};

export const at = (uri: string, offset: number, layer?: number): At => ({ uri, offset, layer });

/** The first word of a node: its field or declaration word. */
export function wordPlace(node: AstNode & { readonly word: string }, where: At): Place {
  const start = where.offset + (node.$cstNode?.offset ?? 0);
  return { uri: where.uri, start, end: start + (node.word?.length ?? 0) };
}

export function problem(
  context: Context,
  place: Place,
  message: string,
  fixes: readonly Fix[] = [],
  rule = 'syntax',
  severity: Severity = 'error',
): void {
  context.problems.push({ rule, severity, message, place, ...(fixes.length > 0 ? { fixes } : {}) });
}

export const replaceFix = (title: string, place: Place, text: string): Fix => ({
  title,
  edits: [{ place, text }],
});

export function nameUse(named: Named | undefined, where: At): NameUse | undefined {
  return named?.name ? { name: named.name, place: placeOf(named, where) } : undefined;
}

/** The words between quotes. An open quote is reported and read to the end of its line. */
export function textOf(
  context: Context,
  text: Text | undefined,
  where: At,
): { readonly text: string; readonly place: Place } | undefined {
  if (!text) return undefined;
  const place = placeOf(text, where);
  if (text.closed !== undefined) return { text: text.closed.slice(1, -1), place };
  if (text.open === undefined) return undefined;
  const words = text.open.slice(1).trimEnd();
  const end = { ...place, start: place.start + 1 + words.length, end: place.start + 1 + words.length };
  problem(context, place, 'These quotes are not closed on this line.', [
    replaceFix('Close the quotes', end, '"'),
  ]);
  return { text: words, place };
}

const DAY_MS = 86_400_000;

/** Year, month, day of a date in one of its forms; nothing where 5/1 may be January or May. */
function inOrder(text: string): string[] {
  const parts = text.split(/[-/.]/);
  if (text.includes('-') || (parts[0]?.length ?? 0) > 2) return parts;
  return text.includes('.') ? parts.reverse() : [];
}

export function dayOf(context: Context, date: Dated | undefined, where: At): Day | undefined {
  if (!date?.text) return undefined;
  const place = placeOf(date, where);
  const [y = '', m = '', d = ''] = inOrder(date.text);
  const iso = `${y.padStart(4, '0')}-${m.padStart(2, '0')}-${d.padStart(2, '0')}`;
  if (y === '') {
    problem(context, place, 'A date is written year-month-day, for instance 2027-01-05.');
    return undefined;
  }
  const time = Date.UTC(Number(y), Number(m) - 1, Number(d));
  const exists = Number.isFinite(time) && new Date(time).toISOString().slice(0, 10) === iso && y.length === 4;
  if (!exists) {
    problem(
      context,
      place,
      `There is no day ${date.text}. A date is year-month-day, for instance 2027-01-05.`,
    );
    return undefined;
  }
  if (iso !== date.text) {
    const form = date.text.includes('-') ? 'with two digits for month and day' : 'year-month-day';
    problem(context, place, `A date is written ${form}: ${iso}.`, [replaceFix(`Write ${iso}`, place, iso)]);
  }
  return { iso, number: Math.round(time / DAY_MS), place };
}

export function yearsOf(context: Context, years: Years | undefined, where: At): YearRange | undefined {
  if (!years?.from) return undefined;
  const place = placeOf(years, where);
  const read = (text: string | undefined) =>
    text === undefined ? undefined : Number(text.replace('\u2212', '-'));
  const from = read(years.from);
  const second = years.to ?? years.wrong?.replace(/^[-\u2212\u2013\u2014\s]+/, '');
  const to = read(second) ?? from;
  if (years.wrong !== undefined && to !== undefined) {
    problem(context, place, `A range of years is written ${from}..${to}.`, [
      replaceFix(`Write ${from}..${to}`, place, `${from}..${to}`),
    ]);
  }
  if (from === undefined || to === undefined || !Number.isInteger(from) || !Number.isInteger(to)) {
    problem(context, place, 'A year is a whole number, for instance made 1640..1660.');
    return undefined;
  }
  return { from, to, place };
}
