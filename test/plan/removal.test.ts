/** What a fix takes out leaves no empty line, no double blank and no other word behind. */
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { removalPlace } from '../../language/src/plan/removal.ts';
import { findings } from '../../language/src/rules/check.ts';
import { study } from '../../language/src/study/build.ts';

/** Takes out what stands between ⟦ and ⟧. */
function without(marked: string): string {
  const text = marked.replace(/[⟦⟧]/g, '');
  const place = { uri: '', start: marked.indexOf('⟦'), end: marked.indexOf('⟧') - 1 };
  const { start, end } = removalPlace(text, place);
  return text.slice(0, start) + text.slice(end);
}

describe('removal', () => {
  test.each([
    ['a line of its own', 'a {\n  film 8 µm\n  ⟦coats 3⟧\n  note "x"\n}', 'a {\n  film 8 µm\n  note "x"\n}'],
    ['CRLF', 'a {\r\n  film 8 µm\r\n  ⟦coats 3⟧  \r\n}', 'a {\r\n  film 8 µm\r\n}'],
    ['old line ends', 'a {\r  ⟦coats 3⟧\r}', 'a {\r}'],
    ['with a comment beside it', 'a {\n  ⟦coats 3⟧   // thin\n}', 'a {\n  // thin\n}'],
    ['in the middle of a line', 'a { film 8 µm   ⟦coats 3⟧   note "x" }', 'a { film 8 µm   note "x" }'],
    ['first in a block', 'a { ⟦film 8 µm⟧   coats 3 }', 'a { coats 3 }'],
    ['last in a block', 'a { film 8 µm   ⟦coats 3⟧ }', 'a { film 8 µm }'],
    ['alone in a block', 'a { ⟦coats 3⟧ }', 'a { }'],
    ['a declaration between empty lines', 'a\n\n⟦b {\n  c\n}⟧\n\nd\n', 'a\n\nd\n'],
    ['a declaration between others', 'a\n⟦b⟧\nc\n', 'a\nc\n'],
    ['the first line', '⟦a⟧\n\nb', 'b'],
    ['the last line', 'a\n⟦b⟧', 'a\n'],
    ['everything', '⟦a⟧', ''],
  ])('%s', (_, marked, left) => {
    expect(without(marked)).toBe(left);
  });
});

test.each([
  ['repeated-field', '  film 8 µm\n  film 9 µm\n  coats 2'],
  ['not-in-plan', '  film 8 µm\n  evidence "S1"\n  coats 2'],
  ['unneeded-allow', '  film 8 µm\n  allow lean-over-fat because "x"\n  coats 2'],
])('the fix of %s leaves no empty line', (rule, fields) => {
  const text = `plan "x"\nlayer a {\n  colour PB29\n${fields}\n}\n`;
  const plan = readPlan(text, 'file:///x.paintplan');
  const found = findings(plan, study(plan)).find((f) => f.rule === rule);
  const { place } = found!.fixes[0]!.edits[0]!;
  expect(text.slice(0, place.start) + text.slice(place.end)).toBe(
    'plan "x"\nlayer a {\n  colour PB29\n  film 8 µm\n  coats 2\n}\n',
  );
});
