/** Bytes to text: UTF-8 and nothing else, because a wrong guess changes a painter's words. */

const UTF_8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
/** Bytes looked at for a text of two bytes a letter. */
const SAMPLE = 4096;

/** Half of the bytes or nearly so are zero, all on one side: Latin letters of two bytes each, as valid as UTF-8. */
function isUtf16(bytes: Uint8Array): boolean {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return true;
  const sample = bytes.subarray(0, SAMPLE);
  const zeros = [0, 0];
  sample.forEach((b, i) => {
    if (b === 0) zeros[i % 2] = (zeros[i % 2] as number) + 1;
  });
  return Math.min(...zeros) === 0 && Math.max(...zeros) > sample.length / 4;
}

/** Letters of a language in one byte each: none of the bytes that no text holds. */
const isLatin = (bytes: Uint8Array): boolean =>
  bytes.every((b) => (b >= 0x20 && b < 0x7f) || b >= 0xa0 || b === 0x09 || b === 0x0a || b === 0x0d);

/** The first byte of a line that begins no character. */
function wrongByte(line: Uint8Array): number {
  const before = (length: number): string | undefined => {
    try {
      // what is cut short at the end may still become a character
      const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
      return decoder.decode(line.subarray(0, length), { stream: true });
    } catch {
      return undefined;
    }
  };
  let [low, high] = [0, line.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (before(middle) !== undefined) low = middle;
    else high = middle - 1;
  }
  return line[new TextEncoder().encode(before(low)).length] as number;
}

/** Where it stops being UTF-8. */
function wrongPlace(bytes: Uint8Array): string {
  // a line feed is never part of another character
  for (let line = 1, start = 0; ; line++) {
    const feed = bytes.indexOf(0x0a, start);
    const row = bytes.subarray(start, feed < 0 ? bytes.length : feed);
    try {
      UTF_8.decode(row);
    } catch {
      const byte = wrongByte(row);
      const letter = isLatin(bytes)
        ? `, ‘${new TextDecoder('latin1').decode(Uint8Array.of(byte))}’ in Latin-1`
        : '';
      return `line ${line}, byte ${byte.toString(16).toUpperCase()}${letter}`;
    }
    if (feed < 0) return `line ${line}`;
    start = feed + 1;
  }
}

/** The text, its byte order mark kept; or what stands against it, as it follows ‘it’. */
export function decoded(bytes: Uint8Array): { readonly text: string } | { readonly not: string } {
  if (isUtf16(bytes)) return { not: 'is not UTF-8 text but UTF-16' };
  try {
    return { text: UTF_8.decode(bytes) };
  } catch {
    return { not: `is not UTF-8 text (${wrongPlace(bytes)})` };
  }
}
