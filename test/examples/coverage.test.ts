/** The examples together use every word of the language, so that a new word is not left without one. */
import { describe, expect, test } from 'vitest';
import { filmWords } from '../../language/src/materials/film-words.ts';
import type { PrepareMethod } from '../../language/src/plan/plan.ts';
import { scan } from '../../language/src/syntax/scan.ts';
import { blockOf, declarationWords, fieldsOf, joiningWords } from '../../language/src/syntax/words.ts';
import { bare, plans, text } from './shown.ts';

/** `glaze`, `layer.film`, …: every declaration and every field of a block that some example holds. */
const used = new Set<string>();
for (const path of plans) {
  const source = text(path);
  for (const { word, fields } of scan(source)) {
    used.add(word);
    const block = blockOf(word);
    for (const at of fields) used.add(`${block}.${/^[a-z-]+/.exec(source.slice(at))?.[0]}`);
  }
}
const language = plans.map(bare).join('\n');

describe('every word has an example', () => {
  test.each(declarationWords.map((w) => [w.word]))('%s', (word) => expect([...used]).toContain(word));

  test.each((['layer', 'studio', 'pigment'] as const).flatMap((b) => fieldsOf(b).map((f) => [b, f.word])))(
    '%s: %s',
    (block, word) => expect([...used]).toContain(`${block}.${word}`),
  );

  // `color` is another spelling of the field `colour`
  test.each(joiningWords.filter((w) => w !== 'color').map((w) => [w]))('%s', (word) =>
    expect(language).toMatch(new RegExp(`\\s${word}\\s`)),
  );

  test.each(Object.keys(filmWords).map((w) => [w]))('film %s', (word) =>
    expect(language).toMatch(new RegExp(`film ${word}\\b`)),
  );

  test.each((['wipe', 'abrade', 'oil-out', 'wash'] satisfies PrepareMethod[]).map((w) => [w]))(
    'prepare %s with an agent',
    (method) => expect(language).toMatch(new RegExp(`prepare ${method} with [a-z]`)),
  );
});

describe('every way of writing a figure has an example', () => {
  test.each([
    ['parts', /= 2? ?\d* ?[a-z-]+ \+ \d+ [a-z]/],
    ['percentages', /= \d+ % [a-z-]+ \+ \d+ % /],
    ['grams', /= \d+ g [A-Z]/],
    ['millilitres', /= \d+ ml [a-z]/],
    ['no amounts, in a record', /colour [a-z-]+ \+ [a-z-]+\n/],
    ['a range of films', /film \d+\.\.\d+ µm/],
    ['a range of oil', /oil-absorption \d+\.\.\d+ /],
    ['a range of years', /made \d{4}\.\.\d{4}/],
    ['inches', /support \S+ \d+ x \d+ in\b/],
    ['metres', /support \S+ [\d.]+ x [\d.]+ m\b/],
    ['degrees Fahrenheit', /temperature \d+ °F/],
    ['stated oil', / in [a-z-]+ \d+ % oil/],
    ['a paint ground by hand', / in [a-z-]+ hand-ground/],
    ['a pigment with a variety', /= P[A-Za-z]+\d+ [a-z-]+ in /],
    ['a code straight in a colour', /colour \d+ P[A-Z]/],
    ['an unknown film', /film unknown/],
    ['an unknown resin', /resin unknown/],
    ['an unknown colour', /colour unknown/],
    ['a sample called by a number', /sample \d+ in /],
  ])('%s', (_, pattern) => expect(language).toMatch(pattern));

  // CSS Color 4
  test.each(['#', 'rgb(', 'hsl(', 'lab(', 'lch(', 'oklab(', 'oklch(', 'color(xyz-d50 '].map((c) => [c]))(
    'a colour in %s',
    (notation) => expect(language).toContain(` ${notation}`),
  );
});
