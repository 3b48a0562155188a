/** Faults of the text in a painter's words, at the place where the eye should go. */
import type { ParseResult } from 'langium';
import { nearest } from '../materials/nearest.ts';
import { short } from './expected.ts';
import type { Stop, SyntaxProblem } from './problem.ts';
import type { Shape } from './scan.ts';
import { type Block, declarationWord, declarationWords, fieldsOf, fieldWord } from './words.ts';

/** The text before an offset without the space and the line comments at its end. Walks back, so that it stays linear. */
function saidBefore(text: string, offset: number): string {
  let said = text.slice(0, offset).trimEnd();
  for (;;) {
    const line = Math.max(said.lastIndexOf('\n'), said.lastIndexOf('\r')) + 1;
    const comment = said.slice(line).search(/(?:^|\s)\/\//);
    if (
      comment < 0 ||
      /"[^"]*$/.test(
        said
          .slice(line, line + comment)
          .slice(-500)
          .replace(/"[^"]*"/g, ''),
      )
    )
      return said;
    said = said.slice(0, line + comment).trimEnd();
  }
}

function lastWord(said: string): string {
  let at = said.length;
  while (at > 0 && said.length - at < 200 && !/[\s+,=]/.test(said[at - 1] as string)) at--;
  const word = said.slice(at) || said.slice(-1);
  // what stands between two figures of a range is a word of its own
  return word.endsWith('..') ? '..' : word;
}

export function firstProblem(result: ParseResult, text: string): Stop | undefined {
  const lexed = result.lexerErrors[0];
  const parsed = result.parserErrors[0];
  if (!lexed && !parsed) return undefined;
  // the parser marks the end of the text with an offset that is none: −1 or NaN
  const parsedAt = parsed && parsed.token.startOffset >= 0 ? parsed.token.startOffset : undefined;
  const lexedFirst = lexed && (parsedAt === undefined || lexed.offset <= parsedAt);
  const start = lexedFirst ? lexed.offset : (parsedAt ?? text.trimEnd().length);
  const length = lexedFirst
    ? Math.max(1, lexed.length)
    : parsedAt === undefined
      ? 0
      : (parsed as { token: { image: string } }).token.image.length;
  const said = saidBefore(text, start);
  return {
    token: text.slice(start, start + length),
    start,
    end: start + length,
    before: lastWord(said),
    beforeEnd: said.length,
    unreadable: lexedFirst,
  };
}

/** A line inside braces that begins with no field of that block. */
export function strangeField(line: string, start: number, block: Block, of: string): SyntaxProblem {
  const word = /^[^\s={},]+/.exec(line)?.[0] ?? line.slice(0, 1);
  const place = { start, end: start + word.length };
  if (/^[^\p{L}_]/u.test(word))
    return { message: `The word of a field is missing before ‘${short(line)}’.`, ...place };
  const known = fieldsOf(block).map((f) => f.word);
  const near = nearest(word, known, 1)[0];
  const elsewhere = declarationWord(word)
    ? ` ‘${word}’ begins a declaration of its own, outside these braces.`
    : (['layer', 'studio', 'pigment'] as const).some((b) => fieldWord(b, word))
      ? ` It belongs to a ${(['layer', 'studio', 'pigment'] as const).find((b) => fieldWord(b, word))}.`
      : '';
  const guess =
    near && !elsewhere
      ? ` Did you mean ‘${near}’?`
      : elsewhere || ` A line here begins with a word such as ${USUAL[block]}.`;
  return {
    message: `‘${short(word)}’ is no field of ${article(of)}.${guess}`,
    ...place,
    ...(near && !elsewhere ? { fixes: [{ title: `Change to ‘${near}’`, ...place, text: near }] } : {}),
  };
}

const USUAL: Record<Block, string> = {
  layer: 'on, colour, medium or film',
  studio: 'temperature, room or session',
  pigment: 'density, masstone or hazard',
  sample: 'the name of a layer',
};

const article = (word: string): string =>
  word === 'studio' ? 'the studio' : `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;

/** Text that begins no declaration. */
export function strangeStart(text: string, start = 0): SyntaxProblem {
  const word = /^[^\s={}"]+/.exec(text)?.[0] ?? text.slice(0, 1);
  const place = { start, end: start + word.length };
  if (word === '}')
    return {
      message: 'This } closes nothing: the braces before it are closed already.',
      ...place,
      fixes: [{ title: 'Remove this }', ...place, text: '' }],
    };
  const block = (['layer', 'studio', 'pigment'] as const).find((b) => fieldWord(b, word));
  const field = block && fieldWord(block, word);
  if (field)
    return {
      message: `‘${word}’ belongs inside the braces of ${article(block)}: ${field.example}.`,
      ...place,
    };
  const next = /^[^\s={}"]+\s*([={]?)/.exec(text)?.[1];
  const near = nearest(
    word,
    declarationWords.map((d) => d.word),
    1,
  )[0];
  const guess = near
    ? ` Did you mean ‘${near}’?`
    : next === '{'
      ? ' What kind of layer is it: ground, underlayer, glaze …?'
      : next === '='
        ? ' Is it a paint, a medium, a mix or a group?'
        : ' A line here begins with a word such as plan, paint, medium, ground or glaze.';
  return {
    message: `‘${short(word)}’ begins no declaration.${guess}`,
    ...place,
    ...(near ? { fixes: [{ title: `Change to ‘${near}’`, ...place, text: near }] } : {}),
  };
}

export function braceProblems(text: string, chunk: Shape): SyntaxProblem[] {
  const problems: SyntaxProblem[] = [];
  if (chunk.stray !== undefined) {
    const at = chunk.stray;
    problems.push({
      message:
        text[at] === '{' ? 'Braces do not stand within braces here.' : 'This } closes the braces too early.',
      start: at,
      end: at + 1,
      fixes: [{ title: `Remove this ${text[at]}`, start: at, end: at + 1, text: '' }],
    });
  }
  if (chunk.openMissing && chunk.open !== undefined) {
    const at = chunk.open;
    problems.push({
      message: `The fields of ‘${chunk.word}’ stand in braces: I expected { after this.`,
      start: at,
      end: at,
      fixes: [{ title: 'Open the braces', start: at, end: at, text: ' {' }],
    });
  }
  if (chunk.open !== undefined && chunk.close === undefined) {
    const end = text.trimEnd().length;
    const line = text.includes('\n') ? '\n}' : ' }';
    problems.push({
      message: `The braces of ‘${chunk.word}’ are not closed: I expected } after this.`,
      start: end,
      end,
      fixes: [{ title: 'Close the braces', start: end, end, text: line }],
    });
  }
  return problems;
}

export const unclosedComment = (start: number): SyntaxProblem => ({
  message: 'Nothing closes this comment, so it ends with its line: I expected */.',
  start,
  end: start + 2,
});
