/** A painter's words for the dry thickness of one coat, µm. */
import { between, type Interval } from './interval.ts';
import { commonPractice } from './sources.ts';
import type { Source } from './types.ts';

// a thickness is judged by its ratio: the likely value is the geometric middle
const word = (low: number, high: number): Interval => between(low, high, tidy(Math.sqrt(low * high)));
const tidy = (um: number): number => (um < 2 ? Math.round(10 * um) / 10 : Math.round(um));

export const filmWords: Readonly<Record<string, Interval>> = {
  wash: word(0.5, 3),
  veil: word(3, 10),
  thin: word(10, 25),
  full: word(25, 80),
  impasto: word(200, 3000),
};

export const filmWordsSource: Source = commonPractice(
  'cross-section literature as remembered: single films of shaded flesh 1–2 µm (thinned, and rubbed or wiped), glazes 5–30 µm, brushed opaque paint 15–60 µm, impasto 200–3000 µm; Gardner 1911 measured 18–62 µm for single brushed coats',
);
