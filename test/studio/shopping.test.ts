/** Tubes and money, by sums done by hand; the prices are made up. */
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { materialsCsv } from '../../language/src/studio/quantities.ts';
import { purchaseWords, shopping, totalWords } from '../../language/src/studio/shopping.ts';
import { studied } from '../plan/text.ts';

/** A square metre, 40 µm wet: 50 ml with the waste, of each of two paints 25. */
const laid = (white: string, black = '', more = '') =>
  studied(`plan "Made up"
support linen 100 x 100 cm
paint white = PW6 in linseed ${white}
paint black = PBk9 in linseed ${black}
layer one { colour 1 white + 1 black   film 40 µm }
${more}`);
const bought = (...text: Parameters<typeof laid>) => {
  const { plan, quantities } = laid(...text);
  return shopping(plan, quantities!);
};
const words = (...text: Parameters<typeof laid>) => bought(...text).purchases.map(purchaseWords);

describe('what to buy', () => {
  test('whole tubes, of 40 ml where nothing is said, and that is said', () => {
    const { purchases, assumptions } = bought('tube 20 ml');
    expect(purchases.map((p) => [p.name, p.tubes.likely, p.tube, p.assumed])).toEqual([
      ['white', 2, 20, false],
      ['black', 1, 40, true],
    ]);
    expect(assumptions.map((a) => `${a.field} ${a.value}`)).toEqual(['tube 40 ml']);
    expect(bought('tube 20 ml', 'tube 20 ml').assumptions).toEqual([]);
    expect(words('tube 12.5 ml')[0]).toBe('2 tubes of 13 ml');
    expect(words('tube 25 ml')[0]).toBe('1 tube of 25 ml');
  });
  test('perhaps one more where the film is a range', () => {
    const { plan, quantities } = studied(`plan "Made up"
support linen 100 x 100 cm
paint white = PW6 in linseed tube 40 ml price 10 EUR
layer one { colour white   film 20..90 µm }`);
    expect(shopping(plan, quantities!).purchases.map(purchaseWords)).toEqual([
      '2 tubes of 40 ml, perhaps 3: 20 to 30 EUR',
    ]);
    expect(words('tube 30 ml price 9.50 EUR', '')[0]).toBe('1 tube of 30 ml: 9.50 EUR');
  });
  test('different currencies are not added, and what has no price is named', () => {
    expect(totalWords(bought('price 9.50 EUR', 'price 3 EUR'))).toBe('Paints cost 12.50 EUR in all.');
    expect(totalWords(bought('price 9.50 EUR', 'price 3 GBP'))).toBe(
      'Paints cost 9.50 EUR and 3 GBP in all.',
    );
    expect(totalWords(bought('tube 20 ml price 9.50 EUR'))).toBe(
      'Paints cost 19 EUR in all; no price is stated of black.',
    );
    expect(totalWords(bought(''))).toBeUndefined();
  });
  test('a tube of 0 ml or a price without its currency counts as not said', () => {
    expect(words('tube 0 ml')[0]).toBe('1 tube of 40 ml');
    expect(totalWords(bought('price 9.50'))).toBeUndefined();
    expect(totalWords(bought('price -3 EUR'))).toBeUndefined();
  });
  test('paint that is ground by hand comes in no tube', () => {
    expect(bought('hand-ground').purchases.map((p) => p.name)).toEqual(['black']);
  });
});

test('the table has mixtures by sitting, tubes and costs, in columns of their own', () => {
  const rows: Record<string, string>[] = parse(materialsCsv(laid('tube 20 ml price 9.50 EUR')), {
    columns: true,
  });
  const of = (kind: string) => rows.filter((r) => r.kind === kind);
  expect(of('paint')[0]).toMatchObject({
    name: 'white',
    tubes: '2',
    tube_ml: '20',
    cost_likely: '19',
    cost_high: '19',
    currency: 'EUR',
    parts: '',
  });
  expect(of('mixture').map((r) => [r.name, r.for, r.parts, r.ml_likely])).toEqual([
    ['white', 'sitting 1: one', '1', '25'],
    ['black', 'sitting 1: one', '1', '25'],
  ]);
});
