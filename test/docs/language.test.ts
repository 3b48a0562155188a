/** Everything that may be written is on the page of the language. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LANGUAGE_PAGE } from '../../language/build/language-page.ts';
import { filmWords } from '../../language/src/materials/film-words.ts';
import { parseColour } from '../../language/src/optics/css.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import { LIGHT_HOURS, LUX, SESSION_HOURS, TEMPERATURE, WITHIN } from '../../language/src/study/defaults.ts';
import { families } from '../../language/src/syntax/families.ts';
import { HAZARDS } from '../../language/src/syntax/fields.ts';
import {
  declarationWords,
  fieldsOf,
  joiningWords,
  LAYER_WORDS,
  type Word,
} from '../../language/src/syntax/words.ts';

const page = readFileSync(LANGUAGE_PAGE, 'utf8');
const grammar = readFileSync(new URL('../../language/grammar/paintplan.langium', import.meta.url), 'utf8');
const word = (text: string) => expect(page, text).toContain(`\`${text}\``);

const fields = (['layer', 'studio', 'pigment'] as const).flatMap((block) => fieldsOf(block));

describe('every word is on the page', () => {
  test('of declarations and fields, with what it takes and an example', () => {
    for (const { word: w, about, takes } of [...declarationWords, ...fields] as readonly Word[])
      expect(page).toMatch(
        new RegExp(
          `\\| \`${w}\`[^|]*\\| ${[about, takes].map((x) => x.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join(' \\| ')} \\|`,
        ),
      );
    for (const { example } of [...declarationWords, ...fields]) word(example);
  });

  test('of layer kinds, films, units, joints and hazards', () => {
    for (const kind of LAYER_WORDS) word(kind);
    for (const film of Object.keys(filmWords)) word(film);
    for (const { units } of Object.values(families)) for (const unit of Object.keys(units)) word(unit);
    for (const joint of joiningWords) word(joint);
    for (const hazard of HAZARDS) word(hazard);
    for (const method of ['wipe', 'abrade', 'oil-out', 'wash']) word(method);
  });

  test('and every word of the grammar', () => {
    const rules = grammar.slice(grammar.indexOf('entry Model'), grammar.indexOf('hidden terminal'));
    const words = new Set([...rules.matchAll(/'([a-z][a-z-]*)'/g)].map((m) => m[1] as string));
    expect(words.size).toBeGreaterThan(60);
    for (const w of words) expect(page, w).toMatch(new RegExp(`\`(?:[^\`]* )?${w}(?: [^\`]*)?\``));
  });
});

test('what is taken where the studio is silent', () => {
  expect(page).toContain(
    `${TEMPERATURE.likely} °C, sessions of ${SESSION_HOURS} hours, ${LUX} lux for ${LIGHT_HOURS} hours a year`,
  );
  expect(page).toContain(`a distance in ΔE00, ${WITHIN} where it is left out`);
});

test('the colours it shows are read', () => {
  const shown = /Colours are written in the syntax of CSS Color 4.*/.exec(page)?.[0] ?? '';
  const written = [...shown.matchAll(/`([^`…]+)`/g)].map((m) => m[1] as string);
  expect(written.length).toBeGreaterThan(3);
  for (const css of written) if (/[#\d]/.test(css)) expect(parseColour(css), css).toBeDefined();
  for (const name of [
    'hsl(40 60% 60%)',
    'hwb(40 20% 20%)',
    'lch(50 40 70)',
    'oklab(0.6 0.1 0.1)',
    'oklch(0.6 0.1 70)',
  ]) {
    expect(shown).toContain(name.slice(0, name.indexOf('(')));
    expect(parseColour(name), name).toBeDefined();
  }
});

test('every example of a declaration is read without a fault of form', () => {
  for (const { example, word: w } of declarationWords) {
    const head = w === 'plan' || w === 'record' || w === 'paintplan' ? '' : 'plan "Made up"\n';
    const faults = readPlan(head + example, 'file:///word.paintplan').problems.filter((p) =>
      /expected/i.test(p.message),
    );
    expect(
      faults.map((f) => f.message),
      example,
    ).toEqual([]);
  }
});
