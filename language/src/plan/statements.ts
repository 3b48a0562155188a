/** The declarations of a text, parsed or remembered, and their problems. */
import { type Parsed, parseChunk } from '../syntax/chunk.ts';
import { type Chunk, rescan, type Shape, scan, shapeOf } from '../syntax/scan.ts';
import { type Context, problem } from './context.ts';
import type { PlanMemo } from './memo.ts';
import type { Place, Problem } from './plan.ts';
import type { Cut, Statement } from './statement.ts';

/** More problems than this help nobody: what comes after them is not read, so that no text takes long. */
const MOST_PROBLEMS = 1000;

const parsed = ({ text, shape }: { readonly text: string; readonly shape: Shape }): Parsed =>
  parseChunk(text, shape);

/** Whether a statement stands where one did, word for word. */
const isAsBefore = ({ chunk, parsed }: Statement, before: Statement | undefined): boolean =>
  parsed === before?.parsed &&
  chunk.start === before.chunk.start &&
  chunk.description === before.chunk.description;

/** The text cut into statements; those of before that an edit did not touch are not cut and parsed again. */
function* statementsOf(text: string, memo: PlanMemo, before: Cut | undefined): Generator<Statement> {
  const parse = (
    of: string,
    chunk: Chunk,
    known: (x: { text: string; shape: Shape }) => Parsed,
  ): Statement => ({
    chunk,
    parsed: memo.parsed.get({ text: of.slice(chunk.start, chunk.end), shape: shapeOf(chunk) }, known),
  });
  if (!before) {
    for (const chunk of scan(text)) yield parse(text, chunk, parsed);
    return;
  }
  const old = before.statements;
  const { chunks, kept, moved } = rescan(text, { text: before.text, chunks: old.map((s) => s.chunk) });
  const movedFrom = chunks.length - moved;
  // what comes out of its place may be put back
  for (const s of old.slice(kept, old.length - moved)) parse(before.text, s.chunk, () => s.parsed);
  for (const [i, chunk] of chunks.entries()) {
    const same = i < kept ? old[i] : i >= movedFrom ? old[i - chunks.length + old.length] : undefined;
    if (!same) {
      const anew = parse(text, chunk, parsed);
      yield isAsBefore(anew, old[i]) ? old[i]! : anew;
    } else yield chunk === same.chunk ? same : { chunk, parsed: same.parsed };
  }
}

/** Every declaration parsed, its problems told; `cut` is missing where the text was not read to its end. */
export function readStatements(
  text: string,
  memo: PlanMemo,
  context: Context,
  before: Cut | undefined,
): { readonly statements: readonly Statement[]; readonly cut?: Cut } {
  const statements: Statement[] = [];
  for (const statement of statementsOf(text, memo, before)) {
    statements.push(statement);
    const { chunk, parsed: p } = statement;
    const place = (x: { start: number; end: number }): Place => ({
      uri: context.uri,
      start: chunk.start + x.start,
      end: chunk.start + x.end,
    });
    for (const { message, fixes, ...stretch } of p.problems)
      problem(
        context,
        place(stretch),
        message,
        fixes?.map((f) => ({ title: f.title, edits: [{ place: place(f), text: f.text }] })),
      );
    if (context.problems.length >= MOST_PROBLEMS) {
      problem(
        context,
        { uri: context.uri, start: chunk.end, end: chunk.end },
        `There are ${MOST_PROBLEMS} faults above; what follows is read once they are mended.`,
      );
      return { statements };
    }
  }
  return { statements, cut: { text, statements } };
}

/**
 * Problems in the order of the text. Where the words of a line could not be parsed (the first `faulty` ones), what was
 * found wrong with its figures is most likely the same fault and is left out.
 */
export function settled(text: string, problems: readonly Problem[], faulty: number): Problem[] {
  const lines = problems
    .slice(0, faulty)
    .map(({ place }) => place.start)
    .sort((a, b) => a - b);
  const onFaultyLine = (start: number) => {
    let low = 0;
    let high = lines.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((lines[middle] as number) < start) low = middle + 1;
      else high = middle;
    }
    return [lines[low - 1], lines[low]].some(
      (l) =>
        l !== undefined &&
        Math.abs(l - start) < 1000 &&
        !/[\r\n]/.test(text.slice(Math.min(l, start), Math.max(l, start))),
    );
  };
  const values = problems.slice(faulty).filter((p) => p.rule !== 'syntax' || !onFaultyLine(p.place.start));
  return [...problems.slice(0, faulty), ...values]
    .sort((a, b) => a.place.start - b.place.start)
    .slice(0, MOST_PROBLEMS + 1);
}
