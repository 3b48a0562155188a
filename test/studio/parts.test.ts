/** Mixtures of a sitting in parts: the stated error held over random mixes, then what painters say of order and let-down. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { familiarSize } from '../../language/src/studio/familiar-sizes.ts';
import {
  letDownWords,
  type Mixture,
  mediumWords,
  mixtures,
  partsWords,
} from '../../language/src/studio/parts.ts';
import {
  errorOf,
  letDownsFor,
  partsTogether,
  roundParts,
  WITHIN,
} from '../../language/src/studio/round-parts.ts';
import { sittings } from '../../language/src/studio/sittings.ts';
import { studied } from '../plan/text.ts';

const HAIR = 1e-6;
const shares = fc
  .array(fc.double({ min: -7, max: 0, noNaN: true }), { minLength: 1, maxLength: 7 })
  .map((logs) => {
    const raw = logs.map(Math.exp);
    const all = raw.reduce((a, b) => a + b, 0);
    return raw.map((x) => x / all);
  });

describe('whole parts', () => {
  test('keep every share within the stated error', () => {
    fc.assert(
      fc.property(shares, (wanted) => {
        const parts = roundParts(wanted);
        expect(parts.every((n) => Number.isInteger(n) && n > 0)).toBe(true);
        expect(errorOf(parts, wanted)).toBeLessThanOrEqual(WITHIN + HAIR);
      }),
    );
  });
  test('are no larger than they need to be', () => {
    expect(roundParts([0.3333, 0.6667])).toEqual([1, 2]);
    expect(roundParts([0.74, 0.26])).toEqual([3, 1]);
    expect(roundParts([0.5, 0.5])).toEqual([1, 1]);
    expect(roundParts([1])).toEqual([1]);
  });
  test('by way of let-downs give the same shares', () => {
    fc.assert(
      fc.property(
        shares,
        fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 7, maxLength: 7 }),
        (wanted, strengths) => {
          const downs = letDownsFor(wanted, strengths);
          const together = partsTogether(wanted, downs);
          const got: number[] = [...together];
          for (const { strong, into, of } of downs) {
            got[strong] = together[strong]! / (of + 1);
            got[into] = got[into]! + (together[strong]! * of) / (of + 1);
          }
          expect(errorOf(got, wanted)).toBeLessThanOrEqual(WITHIN + HAIR);
        },
      ),
    );
  });
});

const PAINTS = `plan "Made up"
support linen 50 x 40 cm
paint white = PW6 in linseed
paint black = PBk9 in linseed
paint blue = PB15:3 in linseed
paint ochre = PY43 in linseed
medium lean = 50 % turpentine + 50 % linseed
mix grey = 3 white + 1 black
`;

function mixed(layers: string): readonly Mixture[] {
  const study = studied(PAINTS + layers);
  return sittings(study.calendar).flatMap((s) => mixtures(study, s.entries));
}
const only = (layers: string): Mixture => {
  const [one, ...more] = mixed(layers);
  expect(more).toEqual([]);
  return one!;
};

describe('a mixture', () => {
  test('has the parts the plan writes, and one total', () => {
    const grey = only('layer a { colour grey   medium 25 % lean   film 10 µm }');
    expect(grey.name).toBe('grey');
    expect(partsWords(grey)).toBe('3 white : 1 black, about 3 ml (two hazelnuts)');
    expect(grey.mediums.map(mediumWords)).toEqual(['1 lean to 3 of paint, about 0.7 ml (14 drops)']);
    expect(only('layer a { colour 1.5 white + 1 black }').portions.map((p) => p.parts)).toEqual([3, 2]);
  });
  test('is laid out with the weak colours first and the strong ones last (common practice)', () => {
    const names = (m: Mixture) => m.portions.map((p) => p.name);
    expect(names(only('layer a { colour 1 blue + 2 ochre + 9 white }'))).toEqual(['white', 'ochre', 'blue']);
    expect(names(only('layer a { colour 1 black + 1 blue + 1 white }'))).toEqual(['white', 'black', 'blue']);
  });
  test('counts phthalocyanine blue as stronger than Prussian, and that as far stronger than ultramarine (common practice)', () => {
    const [white, ultramarine, prussian, phthalo] = only(
      'layer a { colour 1 PB15:3 + 1 PB27 + 1 PB29 + 1 white }',
    ).portions;
    expect([white, ultramarine, prussian, phthalo].map((p) => p?.name)).toEqual([
      'white',
      'PB29',
      'PB27',
      'PB15:3',
    ]);
    expect(prussian!.strength!).toBeGreaterThan(5 * ultramarine!.strength!);
  });
  test('lets a strong colour down where it is little, and only then (common practice)', () => {
    const sky = only('layer a { colour 40 white + 1 blue }');
    expect(sky.portions.map((p) => p.parts)).toEqual([40, 1]);
    expect(letDownWords(sky)).toBe('First mix 1 blue into 10 white, then 3 white : 1 of that.');
    expect(letDownWords(only('layer a { colour 8 white + 1 blue }'))).toBeUndefined();
    // a little white in much black does nothing
    expect(letDownWords(only('layer a { colour 1 white + 40 black }'))).toBeUndefined();
  });
  test('of two layers of one day is one', () => {
    const both = `area left 50 %\narea right 50 %
layer a { on left   colour 3 white + 1 black   medium 25 % lean   film 10 µm }
layer b { on right   colour grey   medium 10 % lean   film 10 µm }`;
    const grey = only(both);
    expect(grey.layers).toEqual(['a', 'b']);
    expect(grey.mediums.map((m) => m.layers)).toEqual([['a'], ['b']]);
    const each = ['a', 'b'].map(
      (on) => mixed(both.replace(/^layer .*$/gm, (l) => (l.startsWith(`layer ${on}`) ? l : '')))[0]!,
    );
    expect(grey.ml!.likely).toBeCloseTo(each[0]!.ml!.likely + each[1]!.ml!.likely, 9);
  });
  test('has parts without a size of the support, and no volume', () => {
    const study = studied(`${PAINTS.replace(' 50 x 40 cm', '')}layer a { colour grey }`);
    const [grey] = mixtures(study, study.calendar.entries);
    expect(partsWords(grey!)).toBe('3 white : 1 black');
    expect(grey!.ml).toBeUndefined();
  });
});

test('familiar sizes are told near their own volume only', () => {
  expect([0.05, 0.3, 0.9, 2, 5, 20, 50].map((ml) => familiarSize(ml))).toEqual([
    'a lentil',
    'a pea',
    'three peas',
    'a hazelnut',
    'a cherry',
    'a walnut',
    'an egg',
  ]);
  expect(familiarSize(0.01)).toBeUndefined();
  expect(familiarSize(400)).toBeUndefined();
});
