/** Random edits of a text, repeatable by their seed: what fingers, clipboards and bad files do to a plan. */

export type Random = () => number;

/** A small generator of even numbers in [0, 1) from a seed (mulberry32, public domain). */
export function random(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** What a text has no place for, or too much of. */
export const MISPLACED = [
  '',
  '}',
  '{',
  '-1',
  '1e9',
  '0',
  '°C',
  'unknown',
  '9999-12-31',
  'coats 10000\n',
  'film 0 µm\n',
  '300 %',
];

const SCRAPS = [
  '{',
  '}',
  '"',
  '/*',
  '*/',
  '//',
  '///',
  '+',
  ',',
  '=',
  '..',
  ':',
  '%',
  '#',
  '(',
  ')',
  '\0',
  '\ufeff',
  '\r',
  '\n',
  '\r\n',
  '\t',
  '\u2028',
  '🎨',
  '\ud83c',
  'é',
  'µ',
  ' 8-12 ',
  ' 0,5 ',
  ' 2027-1-5 ',
  ' 2027-02-30 ',
  ' 1e999 ',
  ' -1 ',
  ' 99999999999999999999999 ',
  ' lab(',
  ' lab(1 2 3) ',
  ' #zz ',
  ' PB29 ',
  ' PBr7 ',
  ' PX99 ',
  ' __proto__ ',
  ' constructor ',
  ' toString ',
  ' unknown ',
  ' g ',
  ' in ',
  ' on ',
  ' with ',
  ' because ',
  ' note ',
  ' medium ',
  ' target ',
  '\nglaze ',
  '\npaint x = ',
  '\nmix a = a',
  '\nuse "x"',
  '\nrecord "y"',
  '\nstudio {',
  '\nsample S1 { ',
  '\narea ',
  ' film ',
  ' colour ',
  ' made 1640..1600 ',
] as const;

/** One edit: a stretch removed, doubled, moved or replaced, a scrap put in, a line cut off. */
export function edit(text: string, next: Random): string {
  const at = Math.floor(next() * (text.length + 1));
  const length = Math.floor(next() ** 3 * 60);
  const scrap = SCRAPS[Math.floor(next() * SCRAPS.length)] as string;
  const piece = text.slice(at, at + length);
  switch (Math.floor(next() * 8)) {
    case 0:
      return text.slice(0, at) + text.slice(at + length);
    case 1:
      return text.slice(0, at) + scrap + text.slice(at);
    case 2:
      return text.slice(0, at) + scrap + text.slice(at + length);
    case 3:
      return text.slice(0, at) + piece + text.slice(at);
    case 4: {
      const to = Math.floor(next() * (text.length + 1));
      const without = text.slice(0, at) + text.slice(at + length);
      return without.slice(0, to) + piece + without.slice(to);
    }
    case 5: {
      const end = text.indexOf('\n', at);
      return end < 0 ? text.slice(0, at) : text.slice(0, at) + text.slice(end);
    }
    case 6:
      return text.slice(0, at) + String.fromCharCode(Math.floor(next() * 0x10000)) + text.slice(at);
    default:
      return text.slice(0, at) + text.slice(at + 1);
  }
}

/** Texts that follow from one another by edits; starts again from the original before it becomes all rubble. */
export function* edits(text: string, seed: number, count: number): Generator<string> {
  const next = random(seed);
  let now = text;
  for (let i = 0; i < count; i++) {
    if (i % 12 === 0) now = text;
    now = edit(now, next);
    yield now;
  }
}
