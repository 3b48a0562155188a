/** One alphabet of names and one shape of codes: what reads words without parsing, and the editor's own patterns, hold to the grammar. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PaintplanTerminals } from '../../language/generated/ast.ts';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import table from '../../language/src/materials/tables/pigments.json' with { type: 'json' };
import { isLikeCode, isName, LETTER } from '../../language/src/syntax/terminals.ts';

const { NAME, CODE } = PaintplanTerminals;
const read = (path: string) => readFileSync(new URL(`../../extension/${path}`, import.meta.url), 'utf8');
/** A pattern as the editor's engine writes characters by their number. */
const forEditor = (pattern: string) => pattern.replaceAll(/\\u([0-9A-F]{4})/g, '\\x{$1}');

test('letters are those a name may begin with', () => {
  const letter = new RegExp(`^[${LETTER}]$`);
  for (let code = 0; code < 0x3000; code++) {
    const c = String.fromCharCode(code);
    expect(letter.test(c), c).toBe(isName(c));
  }
});

test.each([
  ['umber', true],
  ['dead-colour', true],
  ['ocre-doré', true],
  ['охра', true],
  ['2nd', false],
  ['a--b', false],
  ['a-', false],
  ['赭', false],
  ['', false],
])('‘%s’ is a name: %s', (word, is) => expect(isName(word)).toBe(is));

test('codes are told by how they begin', () => {
  expect(['PB29', 'NBk6', 'PBr7:1', 'PR1999'].filter((c) => !isLikeCode(c))).toEqual([]);
  expect(['P29', 'PX2', 'umber', 'pb29'].filter(isLikeCode)).toEqual([]);
});

test('the catalogue has a code exactly where the grammar reads one', () => {
  const alone = new RegExp(`^(?:${CODE.source})$`);
  for (const { id } of table as readonly { readonly id: string }[]) {
    const first = id.split(' ')[0] as string;
    expect(allPigments().find((p) => p.id === id)?.code, id).toBe(alone.test(first) ? first : undefined);
  }
});

test('the highlighting and the word pattern of the editor take names and codes from the grammar', () => {
  const highlighting = read('syntaxes/paintplan.tmLanguage.json');
  const quoted = (pattern: string) => JSON.stringify(pattern).slice(1, -1);
  expect(highlighting.split(quoted(forEditor(NAME.source))).length - 1).toBe(4);
  expect(highlighting).toContain(quoted(forEditor(CODE.source)));
  const { pattern } = JSON.parse(read('language-configuration.json')).wordPattern;
  expect(pattern).toContain(NAME.source);
  expect(pattern).toContain(CODE.source);
});
