import { declarationWord, fieldWord } from '../syntax/words.ts';

/** One line on a field of a studio, a pigment or any kind of layer. */
export function fieldWords(of: string, field: string): string | undefined {
  const block = of === 'studio' || of === 'pigment' ? of : 'layer';
  const word = fieldWord(block, field) ?? declarationWord(field);
  return word && `${word.about}. For instance: ${word.example}`;
}
