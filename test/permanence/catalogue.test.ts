/** Permanence of plans as text, on the shipped catalogue. */
import { describe, expect, test } from 'vitest';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import { DARKENING, darkens } from '../../language/src/permanence/darkening.ts';
import { harmingPairs } from '../../language/src/permanence/pairs.ts';
import { HARMING_PAIRS } from '../../language/src/permanence/pairs-table.ts';
import { periodConflict } from '../../language/src/permanence/period.ts';
import { doseOf } from '../../language/src/permanence/permanence.ts';
import { studied } from '../plan/text.ts';

const HEAD =
  'plan "Made up"\nsupport linen 50 x 40 cm\npaint crimson = PR83 in linseed\npaint madder = NR9 in linseed\npaint white = PW6 in linseed\npaint carmine = NR4 in linseed\n';
const BODY = `${HEAD}layer body { colour 1 white + 1 crimson film 40 µm }\nglaze rose { colour madder film 6 µm }\nglaze red { colour crimson film 6 µm }\nlayer old { colour carmine film 40 µm }`;

describe('doses (CIE 157:2004 from memory; trade mapping of ASTM D4302 classes to blue wool)', () => {
  test('class III spans blue wool 4 in full light to 5 without ultraviolet, I is the longest', () => {
    expect(doseOf('III')).toMatchObject({ low: 3.5, high: 30 });
    expect(doseOf('V')).toMatchObject({ low: 0.22, high: 0.3 });
    const likely = (['V', 'IV', 'III', 'II', 'I'] as const).map((c) => doseOf(c).likely);
    expect(likely).toEqual([...likely].sort((a, b) => a - b));
  });
});

describe('entries', () => {
  const { permanence } = studied(BODY);

  test('what fades comes first, thin before thick, unlisted fugitives before all, lasting ones last', () => {
    expect(permanence.map((p) => `${p.layer} ${p.pigment.code}`)).toEqual([
      'old NR4',
      'red PR83',
      'body PR83',
      'rose NR9',
      'body PW6',
    ]);
  });

  test('years at the plan’s light: dose over 0.45 Mlx·h a year for 150 lux, 3000 hours', () => {
    const red = permanence.find((p) => p.layer === 'red')!;
    expect(red.lightfastness).toBe('III');
    expect(red.years!.low).toBeCloseTo(3.5 / 0.45, 9);
    expect(red.years!.high).toBeCloseTo(30 / 0.45, 9);
    expect(red.note).toMatch(/thin film/);
    expect(red.source.mark).toBe('memory');
    const brighter = studied(
      BODY.replace('support', 'studio { light 300 lux 3000 hours per year }\nsupport'),
    ).permanence.find((p) => p.layer === 'red')!;
    expect(red.years!.likely / brighter.years!.likely).toBeCloseTo(2, 9);
  });

  test('class I, unlisted colours and records have no years', () => {
    expect(permanence.find((p) => p.pigment.code === 'PW6')!.years).toBeUndefined();
    const carmine = permanence.find((p) => p.pigment.code === 'NR4')!;
    expect(carmine).toMatchObject({ lightfastness: undefined, years: undefined });
    expect(carmine.note).toMatch(/fugitive/);
    const record = studied(BODY.replace('plan', 'record')).permanence;
    expect(record.every((p) => p.years === undefined)).toBe(true);
  });

  test('a painter’s own lightfastness counts; a room without light has no years', () => {
    const own = studied(
      `${HEAD}pigment mine like PR83 { lightfast V }\npaint p = mine in linseed\nglaze g { colour p film 6 µm }`,
    ).permanence[0]!;
    expect(own).toMatchObject({ lightfastness: 'V' });
    expect(own.years!.high).toBeCloseTo(0.3 / 0.45, 9);
    const dark = studied(
      BODY.replace('support', 'studio { light 0 lux 3000 hours per year }\nsupport'),
    ).permanence;
    expect(dark.every((p) => p.years === undefined)).toBe(true);
  });

  test('a record without proportions still tells its pigments, through mixes', () => {
    const found = studied(
      'record "Old"\npaint smalt = PB32 in linseed\npaint lead = PW1 in linseed\nmix grey = lead + smalt\nmix pale = lead + grey\nlayer a { colour pale }',
    ).permanence;
    expect(found.map((p) => p.pigment.code).sort()).toEqual(['PB32', 'PW1']);
    expect(found.find((p) => p.pigment.code === 'PB32')!.note).toMatch(/greys/);
  });
});

test('pairs from text: lithopone over lead; zinc with madder; disputed ones say so', () => {
  const told = (layers: string) =>
    harmingPairs(
      studied(
        `${HEAD}paint lithopone = PW5 in linseed\npaint lead = PW1 in linseed\npaint zinc = PW4 in linseed\npaint blue = PB29 in linseed\n${layers}`,
      ),
    ).map((m) => `${m.pigments.map((p) => p.code).join('+')} ${m.how}${m.pair.disputed ? ' disputed' : ''}`);
  expect(told('layer a { colour lead }\nlayer b { colour lithopone }')).toEqual(['PW5+PW1 touching']);
  expect(told('layer a { colour 1 zinc + 1 madder }')).toEqual(['PW4+NR9 mixed']);
  expect(told('layer a { colour 1 blue + 1 lead }')).toEqual(['PB29+PW1 mixed disputed']);
  expect(told('layer a { colour 1 white + 1 madder }')).toEqual([]);
});

test('every pair and every darkening finds pigments in the catalogue', () => {
  for (const { one, other, harm } of HARMING_PAIRS) {
    expect(allPigments().some(one), harm).toBe(true);
    expect(allPigments().some(other), harm).toBe(true);
  }
  for (const d of DARKENING)
    for (const code of d.codes)
      expect(
        allPigments().some((p) => (p.code ?? p.id) === code && darkens(p)),
        code,
      ).toBe(true);
});

test('dates of use: Prussian blue (made 1704–10) and titanium white (1916) in a picture of 1640–60', () => {
  const by = (code: string) => allPigments().find((p) => p.code === code)!;
  const made = { from: 1640, to: 1660 };
  expect(periodConflict(by('PB27'), made)).toMatchObject({ kind: 'too-early', year: 1704 });
  expect(periodConflict(by('PW6'), made)).toMatchObject({ kind: 'too-early', year: 1916 });
  expect(periodConflict(by('PB32'), made)).toBeUndefined();
  expect(periodConflict(by('PW1'), made)).toBeUndefined();
});
