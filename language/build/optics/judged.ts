/** What judged the optical data at their last derivation: kept beside it, printed on the page about colour. */
import type { Coverage, Group } from './evaluate.ts';
import { expectedOff } from './radius.ts';

export interface JudgedClass {
  readonly class: 'B' | 'C' | 'D';
  readonly by: string;
  /** how many colours judged, and the ΔE00 that holds two in three and nineteen in twenty of them */
  readonly colours: number;
  readonly twoInThree: number;
  readonly nineteenInTwenty: number;
}

export interface Judged {
  readonly oilFilms: number;
  /** dry thickness of the measured oil films, µm */
  readonly microns: number;
  /** acrylic to oil */
  readonly common: number;
  readonly groups: readonly Group[];
  readonly coverage: readonly Coverage[];
  readonly classes: readonly JudgedClass[];
}

export const judgedClass = (
  name: JudgedClass['class'],
  by: string,
  differences: readonly number[],
): JudgedClass => ({
  class: name,
  by,
  colours: differences.length,
  twoInThree: expectedOff(differences),
  nineteenInTwenty: expectedOff(differences, 0.95),
});
