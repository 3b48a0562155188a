/**
 * Cuts a text into its declarations before any parser sees it, so that a fault in one can never reach another. A chunk
 * runs from a declaration's word to just before the next one's. Time and space are linear in the text, whatever it holds.
 */
import { blockOf, declarationWord, fieldWord, isLayerWord } from './words.ts';

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
  /** offset of `{`, and of the `}` that closes it, or undefined where it is missing */
  readonly open?: number;
  readonly close?: number;
  /** a brace within the block, or a second block: outside the language */
  readonly stray?: number;
}

// one token of the text, enough to know words, strings, comments and braces apart
const TOKEN =
  /(\/\/\/[^\n\r]*)|(\/\/[^\n\r]*|\/\*[^*]*(?:\*(?!\/)[^*]*)*(?:\*\/)?)|("[^"\n\r]*"?)|([{}])|([A-Za-z_\u00AA-\u024F\u0370-\u03FF\u0400-\u052F\u1E00-\u1FFF][A-Za-z\d_\u00AA-\u024F\u0370-\u03FF\u0400-\u052F\u1E00-\u1FFF-]*(?:\([^()\n\r{}"]*\)?)?)|(\r\n|\n|\r)|([ \t\f\v\u00a0\ufeff]+)|([\s\S])/g;

interface Building {
  start: number;
  end: number;
  word: string;
  description?: string;
  fields: number[];
  open?: number;
  close?: number;
  stray?: number;
}

const isNameable = (word: string) => word === 'dry' || word === 'light' || word === 'oil';

/** Text of the next token on the same line after an offset, for telling `medium lean =` from `medium 20 % lean`. */
function looksDeclared(text: string, after: number): boolean {
  return /^[ \t]+[^\s"={}\d][^\s"={}]*[ \t]*=/.test(text.slice(after, after + 200));
}

export function scan(text: string): Chunk[] {
  const chunks: Chunk[] = [];
  let current: Building | undefined;
  let description: string[] = [];
  let firstOnLine = true;
  let before = '';
  const finish = () => {
    if (current) chunks.push(current);
    current = undefined;
  };
  TOKEN.lastIndex = 0;
  for (let m = TOKEN.exec(text); m; m = TOKEN.exec(text)) {
    const at = m.index;
    const token = m[0];
    const end = at + token.length;
    if (m[6] !== undefined) {
      firstOnLine = true;
      continue;
    }
    if (m[7] !== undefined || m[2] !== undefined) continue;
    if (m[1] !== undefined) {
      // a description inside a block belongs to nothing and counts as a comment
      if (!current || current.open === undefined || current.close !== undefined) description.push(token.slice(3).trim());
      continue;
    }
    const word = m[5] ?? '';
    const inBlock: boolean = current !== undefined && current.open !== undefined && current.close === undefined;
    if (word && begins(word, current, inBlock, firstOnLine, before, text, end)) {
      finish();
      current = { start: at, end, word, fields: [], ...(description.length > 0 ? { description: description.join('\n') } : {}) };
      description = [];
    } else {
      current ??= { start: at, end, word: '', fields: [] };
      if (description.length > 0 && !inBlock) description = [];
      if (token === '{') {
        if (current.open === undefined) current.open = at;
        else current.stray ??= at;
      } else if (token === '}') {
        if (inBlock) current.close = at;
        else if (current.word) {
          // a brace too many ends whatever stood before it and is a chunk of its own
          finish();
          current = { start: at, end, word: '', fields: [] };
        }
      } else if (word && inBlock && beginsField(word, current, firstOnLine)) current.fields.push(at);
      current.end = end;
    }
    firstOnLine = false;
    before = token;
  }
  finish();
  return chunks;
}

function begins(word: string, current: Building | undefined, inBlock: boolean, firstOnLine: boolean, before: string, text: string, end: number): boolean {
  if (!declarationWord(word) || isNameable(word)) return false;
  if (!current || current.close !== undefined || !current.word) return true;
  const block = blockOf(current.word);
  if (inBlock) {
    if (block && fieldWord(block, word)) return firstOnLine && word === 'medium' && looksDeclared(text, end);
    // a word of a declaration inside a block: the brace before it was forgotten
    return firstOnLine || isLayerWord(word);
  }
  // `mix … target #abc` stays one declaration; so does a name after its word, were it ever reserved
  if (word === 'target' && current.word === 'mix' && !firstOnLine) return false;
  return firstOnLine || before !== current.word;
}

function beginsField(word: string, current: Building, firstOnLine: boolean): boolean {
  const block = blockOf(current.word);
  if (!block || block === 'sample') return false;
  return fieldWord(block, word) !== undefined && (firstOnLine || !isNameable(word));
}
