/**
 * Cuts a text into its declarations before any parser sees it, so that a problem in one can never reach another. A chunk
 * runs from a declaration's word to just before the next one's. Braces that are missing, doubled or left over are put
 * right here, where the lines still show what was meant. Time and space are linear in the text, whatever it holds.
 */
import { isLikeCode, LETTER } from './terminals.ts';
import { type Block, blockOf, declarationWord, fieldWord, isJoining, isNameable } from './words.ts';

export interface Chunk {
  /** offset of the declaration's first word, and the end of its last token */
  readonly start: number;
  readonly end: number;
  /** the first word, or '' for text that begins no declaration */
  readonly word: string;
  /** `///` lines right above, markers removed */
  readonly description?: string;
  /** offsets where fields begin inside the braces, for chunks with a block */
  readonly fields: readonly number[];
  /** offset of `{`; where it was forgotten, of the end of the word it should follow, and `openMissing` is set */
  readonly open?: number;
  readonly openMissing?: boolean;
  /** offset of the `}` that closes it, or undefined where it is missing */
  readonly close?: number;
  /** a brace within the block */
  readonly stray?: number;
  /** a comment that nothing closes; it is taken to end with its line */
  readonly unclosed?: readonly { readonly start: number; readonly end: number }[];
}

/** All of a chunk that its parse depends on besides its text: offsets count from its start. */
export type Shape = Omit<Chunk, 'start' | 'end' | 'description'>;

export function shapeOf(chunk: Chunk): Shape {
  const { start: _, end: __, description: ___, ...shape } = moved(chunk, -chunk.start);
  return shape;
}

function moved(chunk: Chunk, by: number): Chunk {
  const { start, end, word, description, fields, open, openMissing, close, stray, unclosed } = chunk;
  const to = (offset: number | undefined) => (offset === undefined ? undefined : offset + by);
  return {
    start: start + by,
    end: end + by,
    word,
    description,
    fields: fields.map((f) => f + by),
    open: to(open),
    openMissing,
    close: to(close),
    stray: to(stray),
    unclosed: unclosed?.map((u) => ({ start: u.start + by, end: u.end + by })),
  };
}

type Building = { -readonly [K in keyof Chunk]: Chunk[K] } & {
  fields: number[];
  unclosed?: { start: number; end: number }[];
  /** whether the first field that begins a line is indented */
  indented?: boolean;
  /** tokens so far */
  tokens: number;
  onLine: boolean;
};

// one token of the text, enough to know words, strings, comments and braces apart; the first character tells which
const TOKEN = new RegExp(
  [
    `[${LETTER}][${LETTER}\\d-]*(?:\\([^()\\n\\r{}"]*\\)?)?`, // word, or colour function
    '[^\\S\\r\\n]+',
    '\\r\\n|\\n|\\r',
    '[{}]',
    '"[^"\\n\\r]*"?',
    '\\/\\/[^\\n\\r]*',
    '\\/\\*',
    `[\\d.,%+#:=][\\d.%${LETTER}]*|[^${LETTER}\\s"{}/\\d.,%+#:=]+|[\\s\\S]`, // anything else
  ].join('|'),
  'g',
);

const IS_LETTER = new RegExp(`[${LETTER}]`);
const isLetter = (c: number): boolean =>
  c < 128
    ? (c >= 97 && c <= 122) || (c >= 65 && c <= 90) || c === 95
    : IS_LETTER.test(String.fromCharCode(c));
const isSpace = (c: number): boolean =>
  c < 128 ? c === 32 || c === 9 || c === 11 || c === 12 : /\s/.test(String.fromCharCode(c));
const [LF, CR, SLASH, STAR, QUOTE] = [10, 13, 47, 42, 34];

/** Whether what follows is `NAME =`, to tell `medium lean = …` from `medium 20 % lean`. */
const declares = (text: string, after: number): boolean =>
  /^[ \t]+[^\s"={}\d][^\s"={}]*[ \t]*=/.test(text.slice(after, after + 120));
/** Whether what follows is `NAME {`. */
const opensBlock = (text: string, after: number): boolean =>
  /^[ \t]+[^\s"={}\d][^\s"={}]*\s*\{/.test(text.slice(after, after + 120));
/** Whether the next line is indented and begins with a field of the block: a brace in the middle of a line did not end it. */
function goesOnInside(chunk: Building, text: string, after: number): boolean {
  const block = blockIn(chunk);
  const next = /^[^\r\n]*(?:\r\n|\n|\r)[ \t]+([a-z-]+)/.exec(text.slice(after, after + 200))?.[1];
  return block !== undefined && next !== undefined && fieldWord(block, next) !== undefined;
}
/** Whether what follows begins an amount. */
const countsFrom = (text: string, after: number): boolean =>
  /^[ \t]*[\d.]/.test(text.slice(after, after + 12));
const isColourNext = (text: string, after: number): boolean =>
  /^\s*(?:#|[a-z]+\()/.test(text.slice(after, after + 40));

export const scan = (text: string): Chunk[] => scanFrom(text);

/**
 * Scans from the end of a chunk that its brace closes, where nothing before it matters any more; the chunk comes first in
 * what is found. Stops behind a chunk that has just been closed where `ended` says so.
 */
function scanFrom(text: string, closed?: Chunk, ended?: (chunk: Chunk) => boolean): Chunk[] {
  const chunks: Building[] = closed ? [{ ...(closed as Building), fields: [...closed.fields] }] : [];
  let current = chunks[0];
  let description: string[] = [];
  let firstOnLine = !closed;
  let lineStart = 0;
  let before = closed ? '}' : '';
  let prose = false; // words after `note` without their quotes are prose, whatever words they are
  let noCommentEnds = false;
  const begin = (at: number, end: number, word: string) => {
    current = { start: at, end, word, fields: [], tokens: 0, onLine: true };
    if (word && description.length > 0) current.description = description.join('\n');
    description = [];
    chunks.push(current);
  };
  TOKEN.lastIndex = closed?.end ?? 0;
  while (TOKEN.lastIndex < text.length) {
    const at = TOKEN.lastIndex;
    TOKEN.test(text);
    const first = text.charCodeAt(at);
    if (isSpace(first)) continue;
    if (first === LF || first === CR) {
      firstOnLine = true;
      prose = false;
      lineStart = TOKEN.lastIndex;
      if (current) current.onLine = false;
      continue;
    }
    let token = text.slice(at, TOKEN.lastIndex);
    if (first === SLASH && text.charCodeAt(at + 1) === SLASH) {
      // a description inside a block belongs to nothing and counts as a comment
      if (text.charCodeAt(at + 2) === SLASH && !inside(current)) description.push(token.slice(3).trim());
      continue;
    }
    if (first === SLASH && text.charCodeAt(at + 1) === STAR) {
      const closing = noCommentEnds ? -1 : text.indexOf('*/', at + 2);
      if (closing >= 0) {
        TOKEN.lastIndex = closing + 2;
        continue;
      }
      noCommentEnds = true;
      const lineEnd = /[\r\n]/.exec(text.slice(at, at + 2000));
      const end = lineEnd ? at + lineEnd.index : endOfLine(text, at);
      if (!current) begin(at, end, '');
      const chunk = current as unknown as Building;
      chunk.unclosed ??= [];
      chunk.unclosed.push({ start: at, end });
      TOKEN.lastIndex = end;
      continue;
    }
    if (
      first === QUOTE &&
      current?.onLine &&
      inside(current) &&
      (token.length === 1 || !token.endsWith('"'))
    ) {
      // an unclosed string in a block of one line does not swallow the brace that closes it
      const brace = /\s*\}\s*$/.exec(token);
      if (brace && brace.index > 0) {
        token = token.slice(0, brace.index);
        TOKEN.lastIndex = at + token.length;
      }
    }
    const end = at + token.length;
    const word = isLetter(first) ? token : '';
    const column = at - lineStart;
    const line: Line = { first: firstOnLine, column, before, text, end };
    if (word && !prose && beginsDeclaration(word, current, line)) begin(at, end, word);
    else if (!current || beginsStray(token, word, current, line)) begin(at, end, '');
    const chunk = current as unknown as Building;
    chunk.tokens++;
    if (!inside(chunk) && description.length > 0 && chunk.start !== at) description = [];
    if (token === '{') {
      if (chunk.open === undefined) chunk.open = at;
      else chunk.stray ??= at;
    } else if (token === '}') {
      if (inside(chunk) && !firstOnLine && !chunk.onLine && goesOnInside(chunk, text, end))
        chunk.stray ??= at;
      else if (inside(chunk)) {
        chunk.close = at;
        prose = false;
      }
    } else if (word && !prose && chunk.start !== at) {
      if (chunk.open === undefined && forgotBrace(word, chunk, line)) {
        chunk.open = chunk.end;
        chunk.openMissing = true;
      }
      if (inside(chunk) && beginsField(word, chunk, line)) {
        chunk.fields.push(at);
        if (firstOnLine) chunk.indented ??= column > 0;
      }
    }
    if (word && (before === 'note' || before === 'evidence' || before === 'because') && !firstOnLine)
      prose = true;
    chunk.end = end;
    firstOnLine = false;
    before = token;
    if (ended && chunk.close === at && ended(chunk)) break;
  }
  return chunks;
}

/** No look ahead from the end of a chunk goes further. */
const AHEAD = 250;

/** Ends with a brace that closes it, and so leaves nothing open to what follows. */
const isClosed = ({ close, end, unclosed }: Chunk): boolean =>
  close !== undefined && end === close + 1 && unclosed === undefined;

/** Characters that two texts share at their beginnings, or at their ends. */
function shared(a: string, b: string, most: number, atEnd: boolean): number {
  const part = (text: string, from: number, to: number) =>
    atEnd ? text.slice(text.length - to, text.length - from) : text.slice(from, to);
  let same = 0;
  for (let step = 4096; step >= 1; step >>= 3)
    while (same + step <= most && part(a, same, same + step) === part(b, same, same + step)) same += step;
  return same;
}

/** A text cut again after an edit: its chunks, how many of the last ones stand as they did, how many have only moved. */
export interface Rescan {
  readonly chunks: readonly Chunk[];
  /** the first so many are the very chunks of before */
  readonly kept: number;
  /** the last so many are those of before, moved by the length of the edit */
  readonly moved: number;
}

/** What `scan` finds, at the cost of what an edit changed. */
export function rescan(
  text: string,
  before: { readonly text: string; readonly chunks: readonly Chunk[] },
): Rescan {
  const { chunks: old } = before;
  const most = Math.min(text.length, before.text.length);
  const start = shared(text, before.text, most, false);
  const end = shared(text, before.text, most - start, true);
  const by = text.length - before.text.length;
  // a comment that nothing closed may be closed by now
  const open = old.find((c) => c.unclosed)?.start ?? text.length;
  const sure = text.indexOf('*/', open) < 0 ? start : Math.min(start, open);
  let from = old.length - 1;
  while (from >= 0 && !(isClosed(old[from]!) && old[from]!.end + AHEAD <= sure)) from--;
  let at = Math.max(0, from + 1);
  let rest = old.length;
  const ended = ({ close, stray }: Chunk): boolean => {
    const was = (close as number) - by;
    if (was < before.text.length - end) return false;
    while (at < old.length && old[at]!.end <= was) at++;
    const same = old[at];
    if (same?.close !== was || !isClosed(same) || (same.stray === undefined) !== (stray === undefined))
      return false;
    rest = at + 1;
    return true;
  };
  const kept = Math.max(0, from);
  const fresh = scanFrom(text, old[from], ended);
  const tail = old.slice(rest);
  return {
    chunks: [...old.slice(0, kept), ...fresh, ...(by === 0 ? tail : tail.map((c) => moved(c, by)))],
    kept,
    moved: tail.length,
  };
}

interface Line {
  /** first token of its line */
  readonly first: boolean;
  readonly column: number;
  /** the token before */
  readonly before: string;
  readonly text: string;
  /** end of the token */
  readonly end: number;
}

function endOfLine(text: string, at: number): number {
  const ends = [text.indexOf('\n', at), text.indexOf('\r', at)].filter((e) => e >= 0);
  return ends.length > 0 ? Math.min(...ends) : text.length;
}

const inside = (chunk: Building | undefined): boolean =>
  chunk !== undefined && chunk.open !== undefined && chunk.close === undefined;

/** The block a chunk's braces hold. Braces after no word at all are most likely those of a layer. */
const blockIn = (chunk: Building): Block | undefined => (chunk.word ? blockOf(chunk.word) : 'layer');

function beginsDeclaration(word: string, current: Building | undefined, line: Line): boolean {
  if (!declarationWord(word) || isNameable(word)) return false;
  if (!current || current.close !== undefined) return true;
  const block = blockIn(current);
  if (inside(current)) {
    if (block && fieldWord(block, word)) {
      if (word === 'medium') return line.first && declares(line.text, line.end);
      // at the margin, where the fields before were indented, it stands outside a block that was never closed
      return line.first && line.column === 0 && current.indented === true;
    }
    // a word of a declaration inside a block: the brace before it was forgotten
    return line.first || opensBlock(line.text, line.end);
  }
  if (word === 'target' && (current.word === 'mix' || !line.first) && isColourNext(line.text, line.end))
    return false;
  if (block && current.word && fieldWord(block, word))
    return word === 'medium' ? !countsFrom(line.text, line.end) : line.first && line.column === 0;
  return line.first || (current.word !== '' && line.before !== current.word);
}

/** Text that belongs to no declaration: after a block has closed, a brace too many, or a word at the margin that begins nothing. */
function beginsStray(token: string, word: string, current: Building, line: Line): boolean {
  if (current.close !== undefined) return !(token === '}' && current.stray !== undefined);
  if (token === '}') return !inside(current) && current.word !== '';
  if (!word || current.word === '' || inside(current) || !line.first || line.column > 0 || isJoining(word))
    return false;
  const block = blockOf(current.word);
  if (block && (fieldWord(block, word) || current.tokens < 2)) return false;
  return (
    !/^[=+,]$/.test(line.before) &&
    !isLikeCode(line.before) &&
    line.before !== current.word &&
    !isJoining(line.before)
  );
}

/** A field before any brace: the brace was forgotten. The word after the declaration's own is its name. */
function forgotBrace(word: string, chunk: Building, line: Line): boolean {
  const block = blockOf(chunk.word);
  if (!block || chunk.tokens < 2 || (chunk.tokens === 2 && !line.first)) return false;
  // a label is one word; another one is the first layer, unless the brace stands after it
  if (block === 'sample')
    return (
      chunk.tokens > 2 &&
      !isJoining(word) &&
      line.before !== 'in' &&
      !/^\s*\{/.test(line.text.slice(line.end, line.end + 8))
    );
  return fieldWord(block, word) !== undefined && (line.first || !isNameable(word));
}

function beginsField(word: string, chunk: Building, line: Line): boolean {
  const block = blockIn(chunk);
  if (!block || block === 'sample') return false;
  return (
    fieldWord(block, word) !== undefined &&
    (line.first || !isNameable(word) || isFieldHere(word, block, line))
  );
}

/** A word that may also be a name, in the middle of a line: a studio names nothing, and no name stands before a date. */
const isFieldHere = (word: string, block: Block, line: Line): boolean =>
  block === 'studio' ||
  (word === 'dry' &&
    !/^[,+=]$/.test(line.before) &&
    /^[ \t]*\d{1,5}[-./]\d/.test(line.text.slice(line.end, line.end + 12)));
