/** A painter's words for a film, held to films that were measured. All in µm, dry. */
import { describe, expect, test } from 'vitest';
import { filmWords } from '../../language/src/materials/film-words.ts';

/** Measured thicknesses, the source of each beside it, and the words a painter would have for them. */
const MEASURED: readonly (readonly [what: string, low: number, high: number, words: readonly string[]])[] = [
  // L. de Viguerie et al., Angew. Chem. Int. Ed. 49 (2010), doi 10.1002/anie.201001116: X-ray fluorescence in depth on
  // seven paintings; seen second-hand, in a release that quotes it
  ['single films of sfumato', 1, 2, ['wash']],
  // the same study, second-hand: the dark flesh of one of them
  ['all films of a dark flesh', 2, 40, ['wash', 'veil', 'thin', 'full']],
  // H. A. Gardner, Paint Technology and Tests (1911), "Paint section measurements": microtome sections of brushed oil
  // paint, single coats
  ['single coat of barytes', 35.6, 35.6, ['full']],
  ['single coats of white lead', 18.4, 40.5, ['thin', 'full']],
  ['single coats of a white', 23, 62, ['thin', 'full']],
  // the same book, its table of films of three coats, 17 to 38 µm a coat; thicknesses printed without a decimal point,
  // read as inches
  ['a coat of white lead to a coat of asbestine', 17, 38, ['thin', 'full']],
];

const wordsFor = (low: number, high: number): string[] =>
  Object.entries(filmWords)
    .filter(([, f]) => f.low < high + 1e-9 && f.high > low - 1e-9)
    .map(([word]) => word);

describe('film words and measured films', () => {
  test.each(MEASURED)('%s, %d to %d µm', (_what, low, high, words) => {
    expect(wordsFor(low, high)).toEqual(words);
    const named = words.map((w) => filmWords[w]!);
    expect(Math.min(...named.map((f) => f.low))).toBeLessThanOrEqual(low);
    expect(Math.max(...named.map((f) => f.high))).toBeGreaterThanOrEqual(high);
  });

  test('no gap from a wash to a full film, and each likely film is the geometric middle', () => {
    const { wash, veil, thin, full } = filmWords;
    expect(wash!.high).toBe(veil!.low);
    expect(veil!.high).toBe(thin!.low);
    expect(thin!.high).toBe(full!.low);
    for (const { low, likely, high } of Object.values(filmWords))
      expect(Math.abs(Math.log(likely / Math.sqrt(low * high)))).toBeLessThan(0.1);
  });
});
