/**
 * The canonical form: spacing and indentation, never order or meaning. Works declaration by declaration; one that cannot
 * be read is left exactly as it is. Every comment stays; doing it twice changes nothing more.
 */
import { parseChunk } from './chunk.ts';
import { lex, type Token } from './parser.ts';
import { type Chunk, scan, shapeOf } from './scan.ts';
import { fieldWord, WORDED } from './words.ts';

export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const WIDEST = 100;
const INDENT = '  ';
/** Between the fields of a block on one line: wider than the spaces inside a field. */
const BETWEEN = '   ';

interface Spaced extends Token {
  /** line breaks before it */
  readonly breaks: number;
}

/** The tokens as the parser has them, comments among them. */
function tokens(text: string): Spaced[] {
  let end = 0;
  return lex(text).map((token) => {
    const breaks = text.slice(end, token.at).match(/\r\n|\n|\r/g)?.length ?? 0;
    end = token.at + token.text.length;
    return { ...token, text: token.text.trimEnd(), breaks };
  });
}

const isComment = (token: Token): boolean => token.type === 'LINE_COMMENT' || token.type === 'BLOCK_COMMENT';

const UNITS: Record<string, string> = {
  um: 'µm',
  μm: 'µm',
  m3: 'm³',
  C: '°C',
  F: '°F',
  ºC: '°C',
  ºF: '°F',
  'g/cm3': 'g/cm³',
};

function spelt(token: Token, before: Token | undefined, first: boolean): string {
  if (before?.type === 'NUMBER' && Object.hasOwn(UNITS, token.text.replace(/\s/g, '')))
    return UNITS[token.text.replace(/\s/g, '')] as string;
  if (/^[°º]\s?[CF]$/.test(token.text)) return `°${token.text.at(-1)}`;
  if (/^g\/100\s?g$/.test(token.text)) return 'g/100g';
  if (token.text === 'color' && first) return 'colour';
  return token.text === '×' ? 'x' : token.text;
}

const tight = (before: string, after: string): boolean =>
  after === ',' || after === '..' || before === '..' || after === ':' || before === ':';

/**
 * `8-12`, which means a range and is reported, and `8colour`, where no field begins: what touches a number with a dash is
 * not torn from it, nor a word that would begin a field if it stood free.
 */
const joined = (before: Token, after: Token): boolean =>
  before.type === 'NUMBER' &&
  (after.type === 'NUMBER' ||
    after.type === 'DASHED' ||
    WORDED.some((b) => fieldWord(b, after.text) !== undefined)) &&
  before.at + before.text.length === after.at;

/** One sound declaration, in lines. */
function laidOut(text: string, chunk: Chunk, oneLine: boolean, eol: string): string {
  const starts = new Set(chunk.fields.map((f) => f - chunk.start));
  const lines: string[] = [];
  let line = '';
  let inside = false;
  let before: Spaced | undefined;
  let opened = false;
  const flush = () => {
    if (line.trim()) lines.push(line.trimEnd());
    line = '';
  };
  const rows = chunk.word === 'sample';
  for (const token of tokens(text)) {
    const inBlock = inside;
    if (token.text === '{' && !inside) {
      line = `${line.trimEnd()} {`;
      inside = true;
      opened = true;
    } else if (token.text === '}' && inside) {
      inside = false;
      if (oneLine) line = `${line.trimEnd()} }`;
      else {
        flush();
        line = '}';
      }
    } else {
      const field = inBlock && (starts.has(token.at) || (rows && token.breaks > 0));
      const indent = inBlock ? INDENT : '';
      const blank = inBlock && !oneLine && token.breaks > 1 && !opened;
      if (field && !oneLine) {
        flush();
        if (blank) lines.push('');
        line = indent;
      } else if (field) line += opened ? ' ' : BETWEEN;
      else if (token.breaks > 0 && before && !oneLine) {
        flush();
        if (blank && isComment(token)) lines.push('');
        // what goes on from the line before stands further in; a comment of its own does not
        line = isComment(token) ? indent : `${indent}${INDENT}`;
      } else if (before && line.trim())
        line +=
          token.type === 'LINE_COMMENT'
            ? '  '
            : tight(before.text, token.text) || joined(before, token)
              ? ''
              : ' ';
      line += spelt(token, before, field);
      opened = false;
      if (token.type === 'LINE_COMMENT') {
        flush();
        // whatever follows stands on its own line
        line = inBlock ? `${INDENT}${INDENT}` : INDENT;
      }
    }
    before = token;
  }
  flush();
  return lines.join(eol);
}

function formatted(text: string, chunk: Chunk, eol: string): string {
  const inner =
    chunk.open === undefined || chunk.close === undefined
      ? ''
      : text.slice(chunk.open - chunk.start, chunk.close - chunk.start);
  if (inner && !/[\r\n]/.test(inner)) {
    const one = laidOut(text, chunk, true, eol);
    if (one.length <= WIDEST && !/[\r\n]/.test(one)) return one;
  }
  return laidOut(text, chunk, false, eol);
}

/** What stands between declarations: comments and blank lines. The first line may end the declaration before. */
function between(text: string, first: boolean, last: boolean, eol: string): string {
  if (text.trim() === '') {
    if (last) return first ? '' : eol;
    if (first) return '';
    const breaks = text.match(/\r\n|\n|\r/g)?.length ?? 0;
    return breaks === 0 ? eol : eol.repeat(Math.min(2, breaks));
  }
  const lines = text.split(/\r\n|\n|\r/).map((l) => l.trim());
  const out = first ? [] : [lines[0] ? `  ${lines[0]}` : ''];
  let blank = first;
  for (const line of first ? lines : lines.slice(1, last ? undefined : -1)) {
    if (line || !blank) out.push(line);
    blank = line === '';
  }
  if (!last && !first && lines.length === 1) return `${out[0]}${eol}`;
  if (last) return `${out.join(eol).replace(/(?:\r\n|\n|\r)+$/, '')}${eol}`;
  return first && out.at(-1) === '' ? out.join(eol) : `${out.join(eol)}${eol}`;
}

/** Edits that bring a text, or the declarations touching a range of it, into canonical form. Linear in the text. */
export function formatEdits(
  text: string,
  range: { readonly start: number; readonly end: number } = { start: 0, end: text.length },
): Edit[] {
  const eol = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  const bom = text.startsWith('\ufeff') ? 1 : 0;
  const chunks = scan(text);
  const edits: Edit[] = [];
  const put = (start: number, end: number, now: string) => {
    if (end >= range.start && start <= range.end && text.slice(start, end) !== now)
      edits.push({ start, end, text: now });
  };
  let at = bom;
  let first = true;
  let soundBefore = true;
  for (const chunk of chunks) {
    const own = text.slice(chunk.start, chunk.end);
    const sound = parseChunk(own, shapeOf(chunk)).problems.length === 0;
    // beside something broken nothing moves: its end may not be where it seems
    const gap = text.slice(at, chunk.start);
    if (sound && soundBefore && !gap.includes('/*')) put(at, chunk.start, between(gap, first, false, eol));
    if (sound && !own.includes('/*')) put(chunk.start, chunk.end, formatted(own, chunk, eol));
    at = chunk.end;
    first = false;
    soundBefore = sound;
  }
  const rest = text.slice(at);
  if (soundBefore && !rest.includes('/*') && (chunks.length > 0 || rest.trim()))
    put(at, text.length, between(rest, first, true, eol));
  return edits;
}

export function applyEdits(text: string, edits: readonly Edit[]): string {
  let out = '';
  let at = 0;
  for (const e of edits) {
    out += text.slice(at, e.start) + e.text;
    at = e.end;
  }
  return out + text.slice(at);
}

/** The whole text in canonical form; `unchanged` where nothing in it can be read. */
export function format(text: string): { readonly text: string } | { readonly unchanged: string } {
  const chunks = scan(text);
  if (chunks.length > 0 && chunks.every((c) => c.word === ''))
    return { unchanged: 'nothing in it is a declaration' };
  return { text: applyEdits(text, formatEdits(text)) };
}
