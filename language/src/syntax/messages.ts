/** Faults of the text in a painter's words, at the place where the eye should go. */
import type { ParseResult } from 'langium';
import { nearest } from '../materials/nearest.ts';
import type { Chunk } from './scan.ts';
import { type Block, declarationWord, declarationWords, fieldsOf, fieldWord } from './words.ts';

export interface Fault {
  readonly message: string;
  /** relative to the chunk */
  readonly start: number;
  readonly end: number;
  readonly fixes?: readonly {
    readonly title: string;
    readonly start: number;
    readonly end: number;
    readonly text: string;
  }[];
}

/** Where a parse stopped: the token it could not take (empty at the end), and the end of the one before. */
interface Stop {
  readonly token: string;
  readonly start: number;
  readonly end: number;
  readonly before: string;
  readonly beforeEnd: number;
}

const short = (text: string): string => {
  const line = text.split(/[\r\n]/, 1)[0] ?? '';
  return line.length > 40 ? `${line.slice(0, 39)}…` : line;
};

export function firstFault(result: ParseResult, text: string): Stop | undefined {
  const lexed = result.lexerErrors[0];
  const parsed = result.parserErrors[0];
  if (lexed && (!parsed || !(parsed.token.startOffset < lexed.offset))) {
    const token = text.slice(lexed.offset, lexed.offset + Math.max(1, lexed.length));
    const before = text.slice(0, lexed.offset).trimEnd();
    return {
      token,
      start: lexed.offset,
      end: lexed.offset + token.length,
      before: /\S+$/.exec(before)?.[0] ?? '',
      beforeEnd: before.length,
    };
  }
  if (!parsed) return undefined;
  // the parser marks the end of the text with an offset that is none: −1 or NaN
  const ended = !(parsed.token.startOffset >= 0);
  const start = ended ? text.trimEnd().length : parsed.token.startOffset;
  const before = text.slice(0, start).replace(/(?:\/\/[^\n\r]*|\s)+$/, '');
  return {
    token: ended ? '' : parsed.token.image,
    start,
    end: ended ? start : start + parsed.token.image.length,
    before: /[^\s+,=]+$|[+,=]$/.exec(before)?.[0] ?? '',
    beforeEnd: before.length,
  };
}

const JOINTS: Record<string, string> = {
  '+': 'another name',
  ',': 'another name',
  '=': 'what it is made of',
  in: 'a name: a binder after a paint’s pigments, an area after a colour',
  with: 'what it is prepared with',
  because: 'the reason in quotes',
  like: 'a pigment it is like, for instance PY43',
  except: 'areas',
  within: 'how far it may be off, a ΔE00 such as 4',
  at: 'a film, for instance 20 µm',
  per: 'hour or year',
};

export function faultOf(stop: Stop, text: string, base: number): Fault {
  const first = /[^\s={}]+/.exec(text)?.[0] ?? '';
  const word =
    fieldWord('layer', first) ??
    fieldWord('studio', first) ??
    fieldWord('pigment', first) ??
    declarationWord(first);
  const own = isField(text) ? word : (declarationWord(first) ?? word);
  const hint = own ? `${own.takes}, for instance ‘${own.example}’` : 'something else';
  const missing =
    stop.token === '' ||
    stop.token === '}' ||
    stop.token === '{' ||
    /[\r\n]/.test(text.slice(stop.beforeEnd, stop.start));
  if (missing) {
    const joint = Object.hasOwn(JOINTS, stop.before) ? JOINTS[stop.before] : undefined;
    const said = joint && stop.before !== first ? joint : hint;
    return {
      message: `After ‘${short(stop.before)}’ I expected ${said}.`,
      start: base + stop.beforeEnd,
      end: base + stop.beforeEnd,
    };
  }
  return {
    message: `‘${short(stop.token)}’ does not fit here: ‘${short(first)}’ takes ${hint}.`,
    start: base + stop.start,
    end: base + stop.end,
  };
}

const isField = (text: string): boolean => !/[{]/.test(text);

/** A line inside braces that begins with no field of that block. */
export function strangeField(line: string, start: number, block: Block, of: string): Fault {
  const word = /^[^\s={}]+/.exec(line)?.[0] ?? line.slice(0, 1);
  const known = fieldsOf(block).map((f) => f.word);
  const near = nearest(word, known, 1)[0];
  const elsewhere = declarationWord(word)
    ? ` ‘${word}’ begins a declaration of its own, outside these braces.`
    : '';
  const guess = near
    ? ` Did you mean ‘${near}’?`
    : elsewhere || ` It may have ${known.slice(0, 6).join(', ')} and others.`;
  return {
    message: `‘${short(word)}’ is no field of a ${of}.${guess}`,
    start,
    end: start + word.length,
    ...(near
      ? { fixes: [{ title: `Change to ‘${near}’`, start, end: start + word.length, text: near }] }
      : {}),
  };
}

/** Text that begins no declaration. */
export function strangeStart(text: string, start = 0): Fault {
  const word = /^[^\s={}"]+/.exec(text)?.[0] ?? text.slice(0, 1);
  if (word === '}')
    return {
      message: 'This } closes nothing: the braces before it are closed already.',
      start,
      end: start + 1,
      fixes: [{ title: 'Remove this }', start, end: start + 1, text: '' }],
    };
  const field = fieldWord('layer', word) ?? fieldWord('studio', word);
  if (field)
    return {
      message: `‘${word}’ belongs inside the braces of ${fieldWord('layer', word) ? 'a layer' : 'studio'}: ${field.example}.`,
      start,
      end: start + word.length,
    };
  const near = nearest(
    word,
    declarationWords.map((d) => d.word),
    1,
  )[0];
  const guess = near
    ? ` Did you mean ‘${near}’?`
    : ' A line here begins with a word such as plan, paint, medium, ground or glaze.';
  return {
    message: `‘${short(word)}’ begins no declaration.${guess}`,
    start,
    end: start + word.length,
    ...(near
      ? { fixes: [{ title: `Change to ‘${near}’`, start, end: start + word.length, text: near }] }
      : {}),
  };
}

export function braceFaults(text: string, chunk: Chunk): Fault[] {
  const faults: Fault[] = [];
  if (chunk.stray !== undefined) {
    const at = chunk.stray - chunk.start;
    faults.push({
      message: 'Braces do not stand within braces here.',
      start: at,
      end: at + 1,
      fixes: [{ title: 'Remove this {', start: at, end: at + 1, text: '' }],
    });
  }
  if (chunk.openMissing && chunk.open !== undefined) {
    const at = chunk.open - chunk.start;
    faults.push({
      message: `The fields of ‘${chunk.word}’ stand in braces: I expected { after this.`,
      start: at,
      end: at,
      fixes: [{ title: 'Open the braces', start: at, end: at, text: ' {' }],
    });
  }
  if (chunk.open !== undefined && chunk.close === undefined) {
    const end = text.trimEnd().length;
    const line = text.includes('\n') ? '\n}' : ' }';
    faults.push({
      message: `The braces of ‘${chunk.word}’ are not closed: I expected } after this.`,
      start: end,
      end,
      fixes: [{ title: 'Close the braces', start: end, end, text: line }],
    });
  }
  return faults;
}

export const unclosedComment = (start: number): Fault => ({
  message: 'Nothing closes this comment, so it ends with its line: I expected */.',
  start,
  end: start + 2,
});
