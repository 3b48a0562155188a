/** Words told apart without a parse. The grammar alone says how they are written; its terminals are read here. */
import { PaintplanTerminals } from '../../generated/ast.ts';

const { NAME, CODE, UNIT } = PaintplanTerminals;

/** What a word may begin with, as the inside of a character class: the class that the terminal of names begins with. */
export const LETTER = (/^\[([^\]]+)\]/.exec(NAME.source) as RegExpExecArray)[1] as string;

/** The Colour Index generic name of a pigment, PB29 or NBr7:1, as a piece of a pattern. */
export const CODE_PATTERN = CODE.source;

const NAME_ALONE = new RegExp(`^(?:${NAME.source})$`);
export const isName = (word: string): boolean => NAME_ALONE.test(word);

const UNIT_ALONE = new RegExp(`^(?:${UNIT.source})$`);
export const isUnit = (word: string): boolean => UNIT_ALONE.test(word);

/** The beginning of a code up to its first digit: enough to know that one was meant. */
const CODE_BEGINS = new RegExp(`^${CODE.source.slice(0, CODE.source.indexOf('\\d'))}\\d`);
export const isLikeCode = (word: string): boolean => CODE_BEGINS.test(word);
