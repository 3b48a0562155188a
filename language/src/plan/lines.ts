/** Turns offsets of a text into lines and columns. Lines end with LF, CRLF or CR, as editors count them. */
export interface Lines {
  /** zero-based line and UTF-16 column of an offset; offsets outside the text are clamped */
  at(offset: number): { readonly line: number; readonly column: number };
  /** offset of a zero-based line and column; columns past the end stop at the line's end */
  offset(line: number, column: number): number;
  readonly count: number;
}

/** Counts the lines of a text once; look-ups after that take logarithmic time. */
export function linesOf(text: string): Lines {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 10 || (c === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  const lineOf = (offset: number) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  return {
    count: starts.length,
    at(offset) {
      const inside = Math.max(0, Math.min(offset, text.length));
      const line = lineOf(inside);
      return { line, column: inside - (starts[line] as number) };
    },
    offset(line, column) {
      if (line < 0) return 0;
      if (line >= starts.length) return text.length;
      const start = starts[line] as number;
      let end = line + 1 < starts.length ? (starts[line + 1] as number) : text.length;
      while (end > start && (text[end - 1] === '\n' || text[end - 1] === '\r')) end--;
      return Math.min(start + Math.max(0, column), end);
    },
  };
}
