/**
 * Makes a sitting card fit one side of A4, in the largest of its sizes of type that will do. Heights are reckoned for
 * letters wider than those of the usual faces, so that a card that fits here fits on paper. What has no room even in the
 * smallest size is left out last lines first, and the card says how much. Lengths in pt, or in em of the card's type.
 */
import type { Block, Cell, Part, Report } from './document.ts';
import { list, words } from './document.ts';

/** Type in pt, by the name the style sheet knows it under. */
export const SIZES = { largest: 14, large: 13, middle: 12, small: 11.2, smaller: 10.4, least: 9.5 } as const;
export type Size = keyof typeof SIZES;

const MM = 72 / 25.4;
/** A4 without the margins of the style sheet. */
const PAGE = { width: 186 * MM, height: 273 * MM };
/** Share of the side that is filled at most: what is reckoned is not measured. */
const FILLED = 0.97;

/** em. The style sheet has the same figures, or less. */
const LETTER = 0.55;
const LINE = 1.35;
const LABEL = 5.5;
const GAP = { part: 0.9, item: 0.25 };
const SWATCH = 1.9;
/** of the width of a table */
const NAME = 0.28;
const TITLE = 1.5;
const QUIET = 0.8;

/** More than a side can hold; what lies beyond is not reckoned. */
const MOST_LINES = 60;
const MOST_LETTERS = 4000;
/** Letters: longer lines are shortened before others are left out, and none is shortened further than the least. */
const LONG = 400;
const LEAST = 80;

/** Capitals and broad letters, and those of scripts that fill a square: as so many of the usual ones. */
const spread = (word: string): number =>
  word.length +
  0.6 * (word.match(/[A-Zmw@%]/g)?.length ?? 0) +
  0.9 * (word.match(/[\u1100-\u1fff\u2e80-\uffff]/g)?.length ?? 0);

/** How many lines a text takes where so many letters go into one. */
function lines(text: string, room: number): number {
  let [count, at] = [1, 0];
  for (const word of text.slice(0, MOST_LETTERS).split(/\s+/)) {
    const length = spread(word);
    if (at > 0 && at + 1 + length > room) [count, at] = [count + 1, 0];
    // longer than a line, it is broken anywhere
    count += Math.max(0, Math.ceil(length / room) - 1);
    at += (at > 0 ? 1 : 0) + (length > room ? length % room : length);
  }
  return count;
}

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const textOf = (c: string | Cell): string => (typeof c === 'string' ? c : c.text);

/** em that a block takes in a column of so many em. */
function height(block: Block, width: number): number {
  const letters = (column: number) => Math.max(4, Math.floor(column / LETTER));
  switch (block.kind) {
    case 'words':
      return block.quiet
        ? lines(block.text, letters(width / QUIET)) * LINE * QUIET + GAP.item
        : lines(block.text, letters(width)) * LINE + GAP.item;
    case 'list':
      return block.items.reduce((sum, i) => sum + lines(i, letters(width - 1.4)) * LINE + GAP.item, 0);
    case 'table': {
      // its other cells hold a swatch and a few letters
      const name = letters(width * NAME);
      const rows = block.rows.map((r) => Math.max(SWATCH, lines(textOf(r[0] ?? ''), name) * LINE));
      return sum(rows.map((row) => row + GAP.item)) + LINE + GAP.item;
    }
    case 'drawing':
      return 0;
  }
}

/** Parts that are read before the work and stand smaller than what is looked up during it. */
export const READ: readonly string[] = ['mind', 'rags'];
const SMALLER = 0.85;

function partHeight({ id, blocks }: Part, width: number): number {
  const size = READ.includes(id) ? SMALLER : 1;
  return GAP.part + Math.max(LINE, sum(blocks.map((b) => height(b, width / size) * size)));
}

/** em of the column that the blocks stand in. */
const column = (pt: number): number => PAGE.width / pt - LABEL - 1;

/** em that are left for the parts of a card. */
function roomFor({ title, subtitle, notice }: Report, foot: string, pt: number): number {
  const letters = (size: number) => Math.floor(PAGE.width / pt / (LETTER * size));
  return (
    (PAGE.height * FILLED) / pt -
    lines(title, letters(TITLE)) * LINE * TITLE -
    lines(subtitle, letters(1)) * LINE -
    (notice ? lines(notice, letters(1)) * LINE + GAP.part : 0) -
    lines(foot, letters(QUIET)) * LINE * QUIET -
    GAP.part
  );
}

const fits = (card: Report, foot: string, pt: number): boolean =>
  sum(card.parts.map((p) => partHeight(p, column(pt)))) <= roomFor(card, foot, pt);

const short = (text: string, most: number): string =>
  text.length > most ? `${text.slice(0, most - 1)}…` : text;

/** Names may be as long as one likes, and a plan may hold any number of anything. */
const bounded = (card: Report): Report => ({
  ...card,
  title: short(card.title, 100),
  subtitle: short(card.subtitle, 200),
  parts: card.parts.map((p) => ({
    ...p,
    blocks: p.blocks.map((b): Block => {
      if (b.kind === 'list') return { ...b, items: b.items.slice(0, MOST_LINES) };
      if (b.kind !== 'table') return b;
      const rows = b.rows.slice(0, MOST_LINES);
      return { ...b, rows: rows.map((r) => r.map((c) => (typeof c === 'string' ? short(c, 40) : c))) };
    }),
  })),
});

/** The same part with its longest line shortened, or its last one left out; undefined where it is as short as it gets. */
function less(part: Part): Part | undefined {
  for (const [i, block] of part.blocks.entries()) {
    const instead = (b: Block): Part => ({ ...part, blocks: part.blocks.with(i, b) });
    if (block.kind === 'table' && block.rows.length > 1)
      return instead({ ...block, rows: block.rows.slice(0, -1) });
    const texts = block.kind === 'list' ? block.items : block.kind === 'words' ? [block.text] : [];
    const longest = texts.reduce((most, t) => Math.max(most, t.length), 0);
    const at = texts.findIndex((t) => t.length === longest);
    if (longest > LONG || (texts.length === 1 && longest > LEAST)) {
      const text = short(texts[at]!, Math.max(LEAST, Math.ceil(longest * 0.7)));
      return instead(block.kind === 'list' ? list(texts.with(at, text)) : words(text));
    }
    if (texts.length > 1) return instead(list(texts.slice(0, -1)));
  }
  return undefined;
}

const linesIn = ({ blocks }: Part): number =>
  blocks.reduce(
    (n, b) => n + (b.kind === 'list' ? b.items.length : b.kind === 'table' ? b.rows.length : 0),
    0,
  );

/** Said under a part of which something is left out. */
const leftOut = (n: number): Block => words(`And ${n} more: see the report.`);

/** A card that fits in no size, as much of it as fits in the smallest. */
function cut(card: Report, foot: string): Report {
  const width = column(SIZES.least);
  const { parts: first, ...head } = bounded(card);
  const room = roomFor({ ...head, parts: [] }, foot, SIZES.least);
  const withNote = (part: Part, i: number): Part => {
    const left = linesIn(card.parts[i]!) - linesIn(part);
    return left > 0 ? { ...part, blocks: [...part.blocks, leftOut(left)] } : part;
  };
  const parts = [...first];
  const high = parts.map((p, i) => partHeight(withNote(p, i), width));
  while (sum(high) > room) {
    const [at] = [...high.keys()].sort((a, b) => high[b]! - high[a]!).filter((i) => less(parts[i]!));
    if (at === undefined) break;
    parts[at] = less(parts[at]!)!;
    high[at] = partHeight(withNote(parts[at], at), width);
  }
  return { ...head, parts: parts.map(withNote) };
}

/**
 * The card in the largest type in which it fits one side. `brief` is the same in fewer words: it stands in where the whole
 * would need the smallest type, and is cut short where even that is too large.
 */
export function fitted(
  { whole, brief }: { readonly whole: Report; readonly brief: Report },
  foot: string,
): { readonly card: Report; readonly size: Size } {
  const sizes = Object.keys(SIZES) as Size[];
  for (const [card, some] of [
    [whole, sizes.slice(0, -1)],
    [brief, sizes],
  ] as const) {
    const size = some.find((s) => fits(card, foot, SIZES[s]));
    if (size) return { card, size };
  }
  return { card: cut(brief, foot), size: 'least' };
}
