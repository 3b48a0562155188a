/**
 * One declaration, parsed: whole where it is sound, else its head and each of its fields alone, so that a broken field
 * loses nothing but itself. Offsets are relative to the chunk's start.
 */
import type { AstNode } from 'langium';
import type { Declaration, LayerField, PigmentField, SampleRow, StudioField } from '../../generated/ast.ts';
import { braceFaults, type Fault, faultOf, firstFault, strangeField, strangeStart } from './messages.ts';
import { parse, type Rule } from './parser.ts';
import type { Chunk } from './scan.ts';
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
  readonly faults: readonly Fault[];
}

const FIELD_RULE: Record<Block, Rule> = { layer: 'LayerField', studio: 'StudioField', pigment: 'PigmentField', sample: 'SampleRow' };

/** A declaration longer than this is not one a person wrote; it is parsed field by field, never whole. */
const LONGEST = 200_000;

function fieldsIn(node: Declaration): readonly Field[] {
  if ('fields' in node) return node.fields;
  return 'rows' in node ? node.rows : [];
}

/** Cuts a text where a new line begins something of its own: neither line asks the other to go on. */
export function ownLines(text: string): { readonly start: number; readonly end: number }[] {
  const parts: { start: number; end: number }[] = [];
  let start = 0;
  for (const m of text.matchAll(/(?:\r\n|\n|\r)[\s]*/g)) {
    const before = text.slice(start, m.index).replace(/\/\/.*$/gm, '').trimEnd();
    const rest = m.index + m[0].length;
    if (before === '' || rest >= text.length) continue;
    const goesOn = /[+,=:]$|\b(?:in|with|because|like|per|within|except|at)$/.test(before) || /^(?:[+,=:}]|\/[/*]|(?:in|with|because|like|per|within|except|at)\b)/.test(text.slice(rest, rest + 12));
    if (goesOn) continue;
    parts.push({ start, end: start + text.slice(start, m.index).trimEnd().length });
    start = rest;
  }
  parts.push({ start, end: text.length });
  return parts.filter((p) => p.end > p.start);
}

/** Parses one line-like stretch; what it cannot take stays in its faults. */
function piece<T extends AstNode>(text: string, base: number, rule: Rule): { node?: Piece<T>; fault?: Fault } {
  const result = parse<T>(text, rule);
  if (!result) return { fault: { message: 'This cannot be read.', start: base, end: base + text.length } };
  const fault = firstFault(result, text);
  return { node: { node: result.value, base }, fault: fault && faultOf(fault, text, base) };
}

function brokenFields(text: string, chunk: Chunk, block: Block): { fields: Piece<Field>[]; faults: Fault[] } {
  const fields: Piece<Field>[] = [];
  const faults: Fault[] = [];
  const open = (chunk.open as number) - chunk.start;
  const end = chunk.close === undefined ? text.length : chunk.close - chunk.start;
  const starts = block === 'sample' ? [] : chunk.fields.map((f) => f - chunk.start);
  const first = starts[0] ?? end;
  const stretches: { start: number; end: number; known: boolean }[] = [];
  const lead = { start: open + 1, end: first };
  for (const part of ownLines(text.slice(lead.start, lead.end))) {
    const s = text.slice(lead.start + part.start, lead.start + part.end);
    const skip = s.length - s.trimStart().length;
    if (s.trim() && !/^(?:\/\/[^\n\r]*\s*)+$/.test(s.trim())) stretches.push({ start: lead.start + part.start + skip, end: lead.start + part.start + s.trimEnd().length, known: block === 'sample' });
  }
  starts.forEach((start, i) => {
    const whole = text.slice(start, starts[i + 1] ?? end);
    const [own, ...rest] = ownLines(whole);
    if (own) stretches.push({ start, end: start + whole.slice(0, own.end).trimEnd().length, known: true });
    for (const r of rest) stretches.push({ start: start + r.start, end: start + r.start + whole.slice(r.start, r.end).trimEnd().length, known: false });
  });
  for (const s of stretches) {
    const line = text.slice(s.start, s.end);
    if (/^\/[/*]/.test(line)) continue;
    if (!s.known) {
      faults.push(strangeField(line, s.start, block, chunk.word));
      continue;
    }
    const { node, fault } = piece<Field>(line, s.start, FIELD_RULE[block]);
    if (node) fields.push(node);
    if (fault) faults.push(fault);
  }
  return { fields, faults };
}

/** Never throws. */
export function parseChunk(text: string, chunk: Chunk): Parsed {
  if (!chunk.word) return { fields: [], faults: [strangeStart(text)] };
  const block = chunk.open === undefined ? undefined : blockOf(chunk.word);
  if (text.length < LONGEST && chunk.stray === undefined && (chunk.open === undefined || chunk.close !== undefined)) {
    const whole = parse<Declaration>(text, 'Declaration');
    if (whole && whole.lexerErrors.length === 0 && whole.parserErrors.length === 0) {
      return { declaration: { node: whole.value, base: 0 }, fields: fieldsIn(whole.value).map((node) => ({ node, base: 0 })), faults: [] };
    }
  }
  if (!block) {
    const [own, ...rest] = ownLines(text);
    const { node, fault } = piece<Declaration>(text.slice(0, own?.end ?? text.length), 0, 'Declaration');
    const strange = rest.slice(0, 1).map((r) => strangeStart(text.slice(r.start, r.end), r.start));
    return { declaration: node, fields: [], faults: [...(fault ? [fault] : []), ...strange] };
  }
  const open = (chunk.open as number) - chunk.start;
  const head = piece<Declaration>(`${text.slice(0, open)}{}`, 0, 'Declaration');
  const { fields, faults } = brokenFields(text, chunk, block);
  return { declaration: head.node, fields, faults: [...(head.fault ? [head.fault] : []), ...faults, ...braceFaults(text, chunk)] };
}
