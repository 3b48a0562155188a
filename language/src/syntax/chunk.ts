/**
 * One declaration, parsed: whole where it is sound, else its head and each of its fields alone, so that a broken field
 * loses nothing but itself. Offsets are relative to the chunk's start.
 */
import type { AstNode } from 'langium';
import type { Declaration, LayerField, PigmentField, SampleRow, StudioField } from '../../generated/ast.ts';
import { problemOf } from './expected.ts';
import { braceProblems, firstProblem, strangeField, strangeStart, unclosedComment } from './messages.ts';
import { parse, type Rule } from './parser.ts';
import type { SyntaxProblem } from './problem.ts';
import type { Shape } from './scan.ts';
import { type Block, blockOf } from './words.ts';

export type Field = LayerField | StudioField | PigmentField | SampleRow;

/** A node and what to add to its offsets. */
export interface Piece<T extends AstNode = AstNode> {
  readonly node: T;
  readonly base: number;
}

export interface Parsed {
  readonly declaration?: Piece<Declaration>;
  readonly fields: readonly Piece<Field>[];
  readonly problems: readonly SyntaxProblem[];
}

const FIELD_RULE: Record<Block, Rule> = {
  layer: 'LayerField',
  studio: 'StudioField',
  pigment: 'PigmentField',
  sample: 'SampleRow',
};

/** No person writes a line, or a declaration without braces, longer than this; a longer block is parsed field by field. */
const LONGEST = 50_000;

/** More problems than this in one declaration help nobody; the rest of it is left unread. */
const MOST_PROBLEMS = 50;

function fieldsIn(node: Declaration): readonly Field[] {
  if ('fields' in node) return node.fields;
  return 'rows' in node ? node.rows : [];
}

const ASKS_ON = /[+,=:]$|\b(?:in|with|because|like|per|within|except|at)$/;
const GOES_ON = /^(?:[+,=:}]|\/[/*]|(?:in|with|because|like|per|within|except|at)\b)/;

/** Cuts a text where a new line begins something of its own: neither line asks the other to go on. */
export function ownLines(text: string): { readonly start: number; readonly end: number }[] {
  const parts: { start: number; end: number }[] = [];
  let start = 0;
  let line = 0;
  let asksOn = false;
  let end = 0;
  for (const m of text.matchAll(/(?:\r\n|\n|\r)\s*/g)) {
    const said = text
      .slice(line, m.index)
      .replace(/\/\/[^\r\n]*$/, '')
      .trimEnd();
    if (said !== '') {
      asksOn = ASKS_ON.test(said.slice(-12));
      end = line + text.slice(line, m.index).trimEnd().length;
    }
    const rest = m.index + m[0].length;
    line = rest;
    if (end <= start || rest >= text.length || asksOn || GOES_ON.test(text.slice(rest, rest + 12))) continue;
    parts.push({ start, end });
    start = rest;
  }
  parts.push({ start, end: text.length });
  return parts.filter((p) => p.end > p.start);
}

/** Parses one line-like stretch; what it cannot take stays in its problems. */
function piece<T extends AstNode>(
  text: string,
  base: number,
  rule: Rule,
): { node?: Piece<T>; problem?: SyntaxProblem } {
  const result = text.length < LONGEST ? parse<T>(text, rule) : undefined;
  if (!result)
    return {
      problem: { message: 'This is too long to be read as one declaration.', start: base, end: base + 1 },
    };
  const problem = firstProblem(result, text);
  return {
    node: { node: result.value, base },
    problem: problem && problemOf(problem, text, base, rule === 'Declaration'),
  };
}

function brokenFields(
  text: string,
  chunk: Shape,
  block: Block,
): { fields: Piece<Field>[]; problems: SyntaxProblem[] } {
  const fields: Piece<Field>[] = [];
  const problems: SyntaxProblem[] = [];
  const open = chunk.open as number;
  const end = chunk.close === undefined ? text.length : chunk.close;
  const starts = block === 'sample' ? [] : chunk.fields;
  for (const s of stretches(text, open + (chunk.openMissing ? 0 : 1), end, starts, block)) {
    if (problems.length >= MOST_PROBLEMS) break;
    const line = text.slice(s.start, s.end);
    if (!s.known) {
      problems.push(strangeField(line, s.start, block, chunk.word));
      continue;
    }
    const { node, problem } = piece<Field>(line, s.start, FIELD_RULE[block]);
    if (node) fields.push(node);
    if (problem) problems.push(problem);
  }
  return { fields, problems };
}

/** The inside of a block, cut where fields begin and where a line begins something of its own. */
function stretches(
  text: string,
  start: number,
  end: number,
  starts: readonly number[],
  block: Block,
): { start: number; end: number; known: boolean }[] {
  const lines: { start: number; end: number; known: boolean }[] = [];
  const add = (from: number, to: number, known: boolean) => {
    const whole = text.slice(from, to);
    ownLines(whole).forEach((part, i) => {
      const line = whole.slice(part.start, part.end);
      const lead = line.length - line.trimStart().length;
      const own = line.trim();
      // a brace too many is told on its own
      if (/^[{}\s]*$|^\/[/*]/.test(own)) return;
      lines.push({
        start: from + part.start + lead,
        end: from + part.start + lead + own.length,
        known: known && (i === 0 || block === 'sample'),
      });
    });
  };
  add(start, starts[0] ?? end, block === 'sample');
  starts.forEach((from, i) => {
    add(from, starts[i + 1] ?? end, true);
  });
  return lines;
}

/** Where one line went wrong, what follows on it most likely went wrong with it. Faults of braces come first. */
function onePerLine(text: string, problems: readonly SyntaxProblem[]): SyntaxProblem[] {
  const told = new Map<number, SyntaxProblem>();
  for (const problem of problems) {
    const line = Math.max(
      text.lastIndexOf('\n', problem.start - 1),
      text.lastIndexOf('\r', problem.start - 1),
    );
    if (!told.has(line)) told.set(line, problem);
  }
  return [...told.values()].sort((a, b) => a.start - b.start);
}

/** The text with comments that nothing closes taken out, each as far as its line goes. */
function withoutUnclosed(text: string, chunk: Shape): string {
  if (!chunk.unclosed) return text;
  let out = '';
  let at = 0;
  for (const { start, end } of chunk.unclosed) {
    out += text.slice(at, start) + ' '.repeat(end - start);
    at = end;
  }
  return out + text.slice(at);
}

/** Never throws. */
export function parseChunk(written: string, chunk: Shape): Parsed {
  const text = withoutUnclosed(written, chunk);
  const parsed = text.trim() === '' ? { fields: [], problems: [] } : parseText(text, chunk);
  const comments = (chunk.unclosed ?? []).slice(0, 1).map((c) => unclosedComment(c.start));
  return comments.length > 0 ? { ...parsed, problems: [...comments, ...parsed.problems] } : parsed;
}

function parseText(text: string, chunk: Shape): Parsed {
  if (!chunk.word) return { fields: [], problems: [strangeStart(text)] };
  const block = chunk.open === undefined ? undefined : blockOf(chunk.word);
  if (
    text.length < LONGEST &&
    chunk.stray === undefined &&
    !chunk.openMissing &&
    (chunk.open === undefined || chunk.close !== undefined)
  ) {
    const whole = parse<Declaration>(text, 'Declaration');
    if (whole && whole.lexerErrors.length === 0 && whole.parserErrors.length === 0) {
      return {
        declaration: { node: whole.value, base: 0 },
        fields: fieldsIn(whole.value).map((node) => ({ node, base: 0 })),
        problems: [],
      };
    }
  }
  if (!block) {
    const [own, ...rest] = ownLines(text);
    const { node, problem } = piece<Declaration>(text.slice(0, own?.end ?? text.length), 0, 'Declaration');
    const strange = rest.slice(0, 1).map((r) => strangeStart(text.slice(r.start, r.end), r.start));
    return { declaration: node, fields: [], problems: [...(problem ? [problem] : []), ...strange] };
  }
  const open = chunk.open as number;
  const head = piece<Declaration>(`${text.slice(0, open)}{}`, 0, 'Declaration');
  const { fields, problems } = brokenFields(text, chunk, block);
  const all = [...braceProblems(text, chunk), ...(head.problem ? [head.problem] : []), ...problems];
  return { declaration: head.node, fields, problems: onePerLine(text, all) };
}
