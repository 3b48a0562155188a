/** Why a word cannot be a name, and one to take instead: said where it is declared and where something is renamed. */
import { isName, isUnit } from './terminals.ts';
import { isNameable, isReserved } from './words.ts';

/** `x` stands between the sides of a size, and so does the x of `x2`. */
const isTimes = (word: string): boolean => /^x(?:\d|$)/.test(word);

const instead = (word: string): string => `say for instance ‘the-${word}’`;

/** Undefined where the word can be a name. `inFormulas`: of something that is mixed, where a unit would be an amount. */
export function nameFault(word: string, inFormulas: boolean): string | undefined {
  if (!isName(word)) return `‘${word}’ cannot be a name: names are words joined by hyphens.`;
  if (isReserved(word) && !isNameable(word))
    return `‘${word}’ is a word of the language and cannot be a name: ${instead(word)}.`;
  if (isTimes(word))
    return `‘${word}’ begins like the ‘x’ of 40 x 50 and cannot be a name: ${instead(word)}.`;
  return inFormulas && isUnit(word)
    ? `‘${word}’ is a unit and cannot be the name of something that is mixed: ${instead(word)}.`
    : undefined;
}
