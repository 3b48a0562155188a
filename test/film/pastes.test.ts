/**
 * Pigment volume of tube paint against the pastes that handbooks print. Which rows set a family's figure and which only
 * judge it is said at each check; where a family has several pigments, each is judged by a figure made without it.
 */
import { describe, expect, test } from 'vitest';
import { usualPaste } from '../../language/src/materials/pastes.ts';
import table from '../../language/src/materials/tables/pastes.json' with { type: 'json' };
import {
  MASSEY,
  middle,
  pigment,
  pigments,
  printed,
  type Row,
  rows,
  tube,
  tubeRange,
  volume,
} from './printed-pastes.ts';

const times = ({ pigment: id, oil }: Row) => oil / middle(pigment(id).oilAbsorption);
const predicted = (row: Row, factor: number) =>
  volume(row.pigment, factor * middle(pigment(row.pigment).oilAbsorption));
const median = (values: readonly number[]): number => {
  const v = [...values].sort((a, b) => a - b);
  const half = Math.floor(v.length / 2);
  return v.length % 2 === 1 ? v[half]! : (v[half - 1]! + v[half]!) / 2;
};
test('the catalogue carries what the later handbook prints, beside Church', () => {
  for (const [id, parts] of Object.entries(MASSEY)) {
    const { paintOil, paintOilAlso } = pigment(id);
    const figure = [paintOil, paintOilAlso].find((f) => f?.source.text.includes('Massey'));
    expect(Math.abs(figure!.low - 100 / parts), id).toBeLessThan(0.6);
  }
});

const familyOf = (id: string) => pigment(id).paste!;
/** Pigments whose oil absorption itself was worked out from these rows: they judge nothing here. */
const fromPastes = (id: string) => pigment(id).oilAbsorption.source.text.includes('oil of a workable paint');
const own = rows.filter((r) => familyOf(r.pigment) !== usualPaste && !fromPastes(r.pigment));
const usual = rows.filter((r) => familyOf(r.pigment) === usualPaste && !fromPastes(r.pigment));
/** Siennas: sorts differ by a factor of four from one handbook to the next, and the range says so. */
const sienna = (r: Row) => r.pigment.endsWith('sienna');
const label = (r: Row) => `${r.pigment} (${r.from})`;

describe('the table', () => {
  test('other fine organic pigments, of which no handbook prints a paste, stand between and say so', () => {
    const rule = familyOf('PV19');
    expect(rule.source.mark).toBe('assumption');
    expect(rule.likely).toBeGreaterThan(usualPaste.likely);
    expect(rule.likely).toBeLessThan(familyOf('PG7').likely);
    expect([rule.low, rule.high]).toEqual([usualPaste.likely, familyOf('PG7').likely]);
  });

  test('names pigments of the catalogue, each in one family', () => {
    const named = table.flatMap((f) => f.pigments);
    for (const id of named) expect([...pigments.keys()], id).toContain(id);
    expect(new Set(named).size).toBe(named.length);
    expect(table.filter((f) => f.pigments.length === 0)).toHaveLength(1);
  });

  test.each(table.map((f) => [f.family, f.times] as const))(
    '%s: in order, none too stiff to hold',
    (_, t) => {
      const [low, likely, high] = t as [number, number, number];
      expect(low).toBeGreaterThan(1);
      expect(likely).toBeGreaterThan(low);
      expect(high).toBeGreaterThan(likely);
    },
  );

  test('a family of its own stands at the median of its printed pastes', () => {
    const families = new Set(own.map((r) => familyOf(r.pigment)));
    expect(families.size).toBe(2);
    for (const family of families) {
      const printed = own.filter((r) => familyOf(r.pigment) === family).map(times);
      expect(Math.abs(family.likely - median(printed)), `${family.family}: ${median(printed)}`).toBeLessThan(
        0.11,
      );
    }
  });
});

describe('judged by rows that set nothing', () => {
  test.each(usual.filter((r) => !sienna(r)).map((r) => [label(r), r] as const))(
    '%s: the usual rule within 0.09 in pigment volume',
    (_, row) => {
      expect(Math.abs(predicted(row, usualPaste.likely) - printed(row))).toBeLessThan(0.09);
    },
  );

  test('the usual rule stands within 0.05 of the printed volume for most, and leans to neither side', () => {
    expect(usual.length).toBeGreaterThan(25);
    const errors = usual.map((r) => predicted(r, usualPaste.likely) - printed(r));
    expect(median(errors.map(Math.abs))).toBeLessThan(0.05);
    expect(Math.abs(median(errors))).toBeLessThan(0.03);
  });

  /** The figure a family would have without this pigment, or without this handbook where it is the only pigment. */
  function without(row: Row): number {
    const family = own.filter((r) => familyOf(r.pigment) === familyOf(row.pigment));
    const others = family.filter((r) => r.pigment !== row.pigment);
    return median((others.length > 0 ? others : family.filter((r) => r.from !== row.from)).map(times));
  }

  test('left out of its family, a pigment of it is foretold better than by the usual rule', () => {
    const errors = own.map((r) => Math.abs(predicted(r, without(r)) - printed(r)));
    const before = own.map((r) => Math.abs(predicted(r, usualPaste.likely) - printed(r)));
    const mean = (v: readonly number[]) => v.reduce((a, b) => a + b, 0) / v.length;
    expect(own.length).toBeGreaterThanOrEqual(11);
    expect(mean(errors)).toBeLessThan(0.6 * mean(before));
  });

  /** Oil absorptions made as the table makes them, from one handbook alone; judged by the other. */
  test.each([
    ['PB28', 20, 40],
    ['PR102', 15, 40],
    ['PG23', 20, 60],
    ['PBk9', 40, 60],
  ])('%s: worked out from Church alone, nearer to Massey than the remembered %i to %i', (id, low, high) => {
    const { paintOil } = pigment(id);
    const foretold = (absorption: number) => volume(id, usualPaste.likely * absorption);
    const massey = volume(id, 100 / MASSEY[id]!);
    const derived = (paintOil!.low / usualPaste.high + paintOil!.high / usualPaste.likely) / 2;
    expect(Math.abs(foretold(derived) - massey)).toBeLessThan(
      Math.abs(foretold(middle({ low, high })) - massey),
    );
  });
});

test('printed pastes lie within the stated range of a tube', () => {
  const outside = rows.filter((r) => {
    const [least, most] = tubeRange(r.pigment);
    return printed(r) < least || printed(r) > most;
  });
  expect(outside.map(label)).toEqual([]);
});

test('phthalocyanines hold about a fifth of pigment, alizarin about a quarter to a third', () => {
  expect(tube('PB15:3', 0, 0)).toBeCloseTo(0.2, 1);
  expect(tube('PG7', 0, 0)).toBeCloseTo(0.2, 1);
  expect(tube('PR83', 0, 0)).toBeGreaterThan(0.25);
  expect(tube('PR83', 0, 0)).toBeLessThan(0.33);
});
