/** What a formula holds, a hazard names: checked against the formulas, not against the table of hazards. */
import { describe, expect, test } from 'vitest';
import { pigments } from '../../language/src/materials/pigments.ts';
import { solvents } from '../../language/src/materials/solvents.ts';
import type { Hazard, Pigment } from '../../language/src/materials/types.ts';

/** Element symbols of a formula; none where the composition is told in words. */
const elements = (formula: string): Set<string> =>
  new Set(
    /[a-z]{3}/.test(formula)
      ? ((formula.match(/(?:[A-Z][a-z]?\d*[.()[\]]*){2,}/g) ?? []).join(' ').match(/[A-Z][a-z]?/g) ?? [])
      : (formula.match(/[A-Z][a-z]?/g) ?? []),
  );

const BY_ELEMENT: Readonly<Record<string, Hazard>> = {
  Pb: 'lead',
  Cd: 'cadmium',
  As: 'arsenic',
  Hg: 'mercury',
  Co: 'cobalt',
  Ni: 'nickel',
  Mn: 'manganese',
  Sb: 'antimony',
  Cu: 'copper',
  Se: 'selenium',
};
const BY_WORD: Readonly<Record<string, Hazard>> = {
  lead: 'lead',
  cadmium: 'cadmium',
  arsen: 'arsenic',
  mercur: 'mercury',
  cobalt: 'cobalt',
  nickel: 'nickel',
  mangan: 'manganese',
  antimon: 'antimony',
  copper: 'copper',
};

const holds = (p: Pigment): Hazard[] => [
  ...[...elements(p.composition.value)].flatMap((e) => BY_ELEMENT[e] ?? []),
  ...Object.entries(BY_WORD).flatMap(([word, hazard]) =>
    p.composition.value.toLowerCase().includes(word) ? [hazard] : [],
  ),
];

describe('hazards follow from the composition', () => {
  test.each(pigments.map((p) => [p.id, p] as const))('%s', (_, p) => {
    for (const hazard of holds(p)) expect(p.hazards, p.composition.value).toContain(hazard);
    if (/CrO4|Cr,S,Mo\)O4/.test(p.composition.value)) expect(p.hazards).toContain('chromium-vi');
    if (/CN\)6/.test(p.composition.value)) expect(p.hazards).toContain('cyanide-if-heated');
  });

  test('as they do from the elements an analysis would find', () => {
    const unnamed = pigments.flatMap((p) =>
      (p.elements?.sure ?? []).flatMap((e) => {
        const hazard = BY_ELEMENT[e];
        return hazard && !p.hazards.includes(hazard) ? [`${p.id} ${e}`] : [];
      }),
    );
    expect(unnamed).toEqual([]);
  });

  test('and a metal is not named where the composition has none', () => {
    const unsaid = pigments.flatMap((p) =>
      p.hazards
        .filter((h) => Object.values(BY_ELEMENT).includes(h) && !holds(p).includes(h))
        .map((h) => `${p.id} ${h}`),
    );
    // some grades only, or told by the name of the earth
    expect(unsaid).toEqual(
      ['PBr7 raw-sienna manganese', 'PBr7 burnt-sienna manganese', 'PG50 nickel'].filter((x) =>
        unsaid.includes(x),
      ),
    );
  });

  test('the formulas were read: many pigments hold each of the common metals', () => {
    const count = (h: Hazard) => pigments.filter((p) => holds(p).includes(h)).length;
    expect([
      count('lead') >= 8,
      count('cadmium') >= 4,
      count('cobalt') >= 8,
      count('copper') >= 8,
      count('arsenic') >= 3,
      count('mercury') >= 1,
    ]).toEqual(Array(6).fill(true));
  });
});

/** CAS registry numbers end in a check digit: the sum of the digits, each times its place from the right, modulo 10. */
const checks = (cas: string): boolean => {
  const digits = cas.replaceAll('-', '');
  const sum = [...digits.slice(0, -1)].reverse().reduce((s, d, i) => s + Number(d) * (i + 1), 0);
  return sum % 10 === Number(digits.at(-1));
};

test('the check itself: 7732-18-5 is water, 7732-18-4 nothing', () => {
  expect([checks('7732-18-5'), checks('7732-18-4')]).toEqual([true, false]);
});

test('every CAS number has its check digit', () => {
  let seen = 0;
  for (const x of [...pigments, ...solvents])
    for (const cas of x.cas?.match(/\d{2,7}-\d\d-\d/g) ?? []) {
      seen++;
      expect(checks(cas), `${x.id} ${cas}`).toBe(true);
    }
  expect(seen).toBeGreaterThan(100);
});

test('a retired or fugitive pigment is not told as lasting', () => {
  for (const p of pigments.filter((q) => /fugitive|fades/.test(q.lightfastnessNote?.value ?? '')))
    expect(p.lightfastness, p.id).toBeUndefined();
});
