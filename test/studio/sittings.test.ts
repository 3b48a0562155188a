import { expect, test } from 'vitest';
import { sittings } from '../../language/src/studio/sittings.ts';
import { studied } from '../plan/text.ts';

const told = (text: string) => {
  const { calendar } = studied(text);
  return sittings(calendar).map((s) => [
    s.number,
    s.day,
    s.entries.map((e) => `${e.layer} ${e.coat}`).join(', '),
  ]);
};

test('Coats of one day are one sitting, and what nobody can date comes last', () => {
  const plan = `plan "Test"
support linen 40 x 50 cm
area sky 60 %
area sea 40 %
underlayer above { on sky  colour PW6 }
underlayer below { on sea  colour PB29 }
glaze lost { on sky  colour PQ1  after 3 days }
glaze later { on sky  colour PB29 }
`;
  const rows = told(plan);
  expect(rows[0]).toEqual([1, 0, 'above 1, below 1']);
  expect(rows.at(-1)).toEqual([rows.length, undefined, 'later 1']);
});

test('A day that is written stands before one that is reckoned', () => {
  const plan = `plan "Test"
support linen 40 x 50 cm
layer first { colour PW6  painted 2027-03-04 }
glaze mist { colour PB29  painted 2027-04-20 }
`;
  const [first, second] = told(plan);
  expect((second![1] as number) - (first![1] as number)).toBe(47);
});

test('What rounding leaves of a whole day is that day', () => {
  const at = (likely: number) => ({ layer: 'a', index: 0, coat: 1, notBefore: 1, likely, safeFrom: 3 });
  expect(sittings({ dated: false, entries: [at(2 + 1e-12)] })[0]!.day).toBe(2);
  expect(sittings({ dated: false, entries: [at(2.1)] })[0]!.day).toBe(3);
});
