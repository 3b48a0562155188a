/** The canonical form: same tree, every comment, idempotent, any line end; what is broken stays as it is. */
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { applyEdits, format, formatEdits } from '../../language/src/syntax/format.ts';
import { edits } from '../fuzz/text.ts';
import { tries } from '../long.ts';
import { samples } from '../plan/samples.ts';
import { lost, sayings } from './said.ts';

const formatted = (text: string): string => {
  const result = format(text);
  return 'text' in result ? result.text : text;
};
const comments = (text: string) =>
  text.match(/\/\/[^\r\n]*|\/\*[\s\S]*?\*\//g)?.map((c) => c.trimEnd()) ?? [];
/** All that is no space, spellings of units made one. */
const ink = (text: string) =>
  text
    .replace(/^\ufeff/, '')
    .replace(/\bcolor\b(?![(\w-])/g, 'colour')
    .replace(/\s+/g, '')
    .replaceAll('×', 'x')
    .replaceAll('μ', 'µ')
    .replaceAll('º', '°')
    .replace(/um(?=[^a-z])/g, 'µm')
    .replace(/m3/g, 'm³')
    .replace(/(\d)([CF])\b/g, '$1°$2');

function holds(text: string): void {
  const once = formatted(text);
  expect(formatted(once), 'a second pass changes nothing').toBe(once);
  expect(comments(once).map((c) => c.replace(/\s+/g, ' '))).toEqual(
    comments(text).map((c) => c.replace(/\s+/g, ' ')),
  );
  const [before, after] = [readPlan(text, 'file:///f'), readPlan(once, 'file:///f')];
  const said = (p: typeof before) => sayings(p).map((s) => s.words.replace(/"words":"[^"]*"/g, ''));
  expect(lost(said(before), said(after))).toEqual([]);
  expect(after.problems.map((p) => p.message).sort()).toEqual(before.problems.map((p) => p.message).sort());
}

describe('what was said stays said', () => {
  test.each(samples.map((s) => [s.name, s.text] as const))('%s', (_, text) => holds(text));

  test.each(samples.map((s) => [s.name, s.text] as const))('%s with its spaces gone wild', (_, text) => {
    const wild = text
      .replace(/\n/g, '\n   \n')
      .replace(/ = /g, '\t=  ')
      .replace(/ \{/g, '{')
      .replace(/, /g, ' ,');
    holds(wild);
    expect(ink(formatted(wild))).toBe(ink(text));
  });

  test.each([
    ['CRLF', '\r\n'],
    ['CR', '\r'],
  ])('%s stays', (_, eol) => {
    for (const { text } of samples) {
      const other = text.replaceAll('\n', eol);
      expect(formatted(other)).toBe(formatted(text).replaceAll('\n', eol));
      holds(other);
    }
  });

  test('a byte-order mark stays', () => {
    const text = `\ufeff${samples[0]?.text}`;
    expect(formatted(text).startsWith('\ufeff')).toBe(true);
    holds(text);
  });

  test('broken texts: no ink is lost, a second pass changes nothing', () => {
    for (const { text } of samples)
      for (const edited of edits(text, 11, tries(20, 60))) {
        const once = formatted(edited);
        expect(ink(once)).toBe(ink(edited));
        expect(formatted(once)).toBe(once);
      }
  });
});

describe('the form', () => {
  test('spacing, indentation, one field a line', () => {
    expect(formatted('plan   "x"\nglaze a{\non sky,sea\n     film 8µm\ncoats 2}\n')).toBe(
      'plan "x"\nglaze a {\n  on sky, sea\n  film 8 µm\n  coats 2\n}\n',
    );
  });
  test('a figure that runs into the word of a field stays so: no field begins there', () => {
    const text = 'glaze a { film 1colour unknown   coats 2 }\n';
    expect(formatted(text)).toBe(text);
  });
  test('a block of one line stays one while it fits', () => {
    expect(formatted('ground a {material gesso film 8 um}')).toBe(
      'ground a { material gesso   film 8 µm }\n',
    );
    const long = `ground a { material gesso   note "${'long '.repeat(20)}" }`;
    expect(formatted(long)).toBe(`ground a {\n  material gesso\n  note "${'long '.repeat(20)}"\n}\n`);
  });
  test('one fact a line, the words that may be names too', () => {
    expect(
      formatted(
        'studio {\n session 3 hours light 150 lux 3000 hours per year light-source D65\n}\nglaze a {\n on sky, dry dry 2027-01-17 coats 2\n}\n',
      ),
    ).toBe(
      'studio {\n  session 3 hours\n  light 150 lux 3000 hours per year\n  light-source D65\n}\nglaze a {\n  on sky, dry\n  dry 2027-01-17\n  coats 2\n}\n',
    );
  });
  test('order is never touched', () => {
    const text = 'glaze b { film thin   on sky }\nglaze a { on sky   colour 2 b + 1 a }\narea sky 50 %\n';
    expect(formatted(text)).toBe(text);
  });
  test('comments stay where they are', () => {
    const text =
      '// head\n\n/// about a\nglaze a { // why\n  // before\n  film thin // after\n\n  /* two\n     lines */\n  on sky\n  // last\n}\n// end\n';
    const once = formatted(text);
    holds(text);
    expect(once.indexOf('// why')).toBeLessThan(once.indexOf('// before'));
    expect(once).toContain('/// about a\nglaze a {');
  });
  test('a broken declaration is left as it is, the others are formatted', () => {
    const text = 'area   sky 50%\nglaze  a  {\n film   ;\n}\narea   sea 50%\n';
    expect(formatted(text)).toBe('area sky 50 %\nglaze  a  {\n film   ;\n}\narea sea 50 %\n');
  });
  test('a range', () => {
    const text = 'area   a 1 %\narea   b 1 %\narea   c 1 %\n';
    const at = text.indexOf('area   b');
    expect(applyEdits(text, formatEdits(text, { start: at + 2, end: at + 6 }))).toBe(
      'area   a 1 %\narea b 1 %\narea   c 1 %\n',
    );
  });
  test('nothing readable, nothing changed', () => {
    expect(format('hello   world')).toEqual({ unchanged: 'nothing in it is a declaration' });
    expect(formatted('')).toBe('');
  });
});

test('the examples that ship are in canonical form', () => {
  for (const { name, text } of samples.filter((x) => !x.name.startsWith('rich')))
    expect(formatted(text), name).toBe(text);
});
