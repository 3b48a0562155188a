/** Cautions: one for every hazard, step and solvent; none promises safety. */
import { describe, expect, test } from 'vitest';
import { lookupPigment } from '../../language/src/materials/catalogue.ts';
import {
  allCautions,
  cautionFor,
  classificationWords,
  deferringLine,
  solventCaution,
  stepCaution,
} from '../../language/src/materials/cautions.ts';
import { pigments } from '../../language/src/materials/pigments.ts';
import { solvents } from '../../language/src/materials/solvents.ts';
import type { Pigment } from '../../language/src/materials/types.ts';
import { dayLimits } from '../../language/src/studio/air-limits.ts';

const named = (code: string): Pigment => {
  const found = lookupPigment(code);
  if (found.kind !== 'found') throw new Error(code);
  return found.pigment;
};

test('every hazard of every pigment has its caution', () => {
  for (const p of pigments)
    for (const h of p.hazards) expect(cautionFor(h)?.text.length, h).toBeGreaterThan(20);
});

test('every solvent but water has its caution', () => {
  for (const s of solvents) expect(solventCaution(s.id) !== undefined, s.id).toBe(!s.harmless);
  expect(solventCaution('constructor')).toBeUndefined();
});

test('no caution calls anything safe or harmless, and each has a source', () => {
  for (const c of allCautions()) {
    expect(c.text).not.toMatch(/\b(is|are) (safe|harmless)\b/);
    expect(c.source.text.length, c.title).toBeGreaterThan(3);
  }
});

describe('figures of the sources', () => {
  test('lead: 50 and 30 µg/m³, 400 over the hours (29 CFR 1910.1025)', () =>
    expect(cautionFor('lead').text).toMatch(/50 µg\/m³.*30.*400/));
  test('cadmium: 5 µg/m³ (29 CFR 1910.1027 (c))', () =>
    expect(cautionFor('cadmium').text).toMatch(/5 µg\/m³/));
  test('chromium VI: 5 and 2.5 µg/m³ (29 CFR 1910.1026)', () =>
    expect(cautionFor('chromium-vi').text).toMatch(/5 µg\/m³.*2\.5/));
  test('turpentine: 20 ppm (ACGIH, in Haz-Map); 100 ppm, 800 ppm, 35 °C (NIOSH Pocket Guide)', () =>
    expect(solventCaution('turpentine')?.text).toMatch(/20 ppm.*100 \(560 mg.*800.*35 °C/));
  test('white spirit: 116 and 290 mg/m³ (SCOEL/SUM/87), 350 and 1800 (NIOSH), 100 ppm (ACGIH)', () =>
    expect(solventCaution('white-spirit')?.text).toMatch(/116.*290.*350.*1800.*100 ppm/));
  test('where a caution names a limit, it begins with the strictest of the table', () => {
    for (const s of solvents) {
      const [, figure, unit] =
        /Keep the air below (\d+) (ppm|mg\/m³)/.exec(solventCaution(s.id)?.text ?? '') ?? [];
      if (!figure) continue;
      const [strictest] = dayLimits(s);
      expect(unit === 'ppm' ? strictest?.ppm : strictest?.mgPerM3, s.id).toBe(Number(figure));
    }
  });
});

test('the deferring line puts the data sheet, local codes and qualified people first', () => {
  expect(deferringLine.text).toMatch(/estimate/);
  expect(deferringLine.text).toMatch(/safety data sheet/);
  expect(deferringLine.text).toMatch(/codes/);
  expect(deferringLine.text).toMatch(/licensed|qualified/);
});

test('rags: flat and single, or water in a closed metal can', () => {
  expect(stepCaution('rags').text).toMatch(/flat and single.*closed metal can.*water/);
  expect(stepCaution('rags').source.mark).toBe('second-hand');
});

describe('classification', () => {
  test('of an unlisted pigment says what was done, never “safe” or “harmless”', () => {
    for (const p of pigments) {
      const said = classificationWords(p);
      expect(said, p.id).not.toMatch(/\bsafe\b|harmless|no harmonised entry/);
      if (!p.classification) expect(said, p.id).toBe('not looked up');
    }
    expect(classificationWords(named('PB29'))).toBe('searched and not listed');
  });

  test('of a listed one is what the list says (CLP Annex VI)', () => {
    expect(classificationWords(named('PW1'))).toMatch(/H360Df/);
    expect(classificationWords(named('PY37'))).toMatch(/H350/);
  });

  test('of a cadmium red tells that another country classes what the EU excepts', () => {
    expect(classificationWords(named('PR108'))).toMatch(/^searched and not listed.*Australia: Carc\.1B H350/);
  });
});
