/** Writes the words of fields into the highlighting from their table: `node language/build/highlighting.ts`. */
import { pathToFileURL } from 'node:url';
import { fieldsOf, WORDED } from '../src/syntax/words.ts';
import { refill } from './page.ts';

export const HIGHLIGHTING = new URL('../../extension/syntaxes/paintplan.tmLanguage.json', import.meta.url);

/** The grammar of the highlighting with the words of every block written anew. */
export const highlighted = (text: string): string =>
  WORDED.reduce((grammar, block) => {
    const words = fieldsOf(block).flatMap((f) => (f.word === 'colour' ? ['colour', 'color'] : [f.word]));
    const of = new RegExp(
      `(\\(\\?:)[a-z|-]+(\\)[^"]*",\\s*"name": "support\\.type\\.property-name\\.${block}\\.)`,
    );
    if (!of.test(grammar)) throw new Error(`The highlighting has no place for the fields of ${block}.`);
    return grammar.replace(of, `$1${words.join('|')}$2`);
  }, text);

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  refill(HIGHLIGHTING, highlighted);
