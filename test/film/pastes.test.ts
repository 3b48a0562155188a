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

/** Per cent of oil by weight: Gardner (1911), “Percentages of oil required for grinding … into average paste form”. */
const AVERAGE_PASTE: Readonly<Record<string, number>> = {
  ...{ PW1: 9, PW2: 10, PW4: 17, PW18: 20, PW19: 28, PW22: 9, PW25: 22, PW26: 32, PW27: 26 },
  ...{ PB29: 27, PB27: 50, PBk6: 72, PBk9: 50, PBk10: 40, NBr8: 50, PY36: 15, PY34: 23, PO21: 16 },
  ...{ 'PR101 dark': 20, PY43: 28, PR102: 23, PR105: 12, PR106: 14, PG23: 32, PG21: 23, PG15: 21 },
  ...{ 'PBr7 raw-sienna': 52, 'PBr7 burnt-sienna': 45, 'PBr7 raw-umber': 48, 'PBr7 burnt-umber': 47 },
};

test('a colour grinder’s average pastes of 1911 lie within the stated range of a tube', () => {
  const outside = Object.entries(AVERAGE_PASTE).flatMap(([id, percent]) => {
    const ends = ([-1, 1] as const).flatMap((a) => ([-1, 1] as const).map((b) => tube(id, a, b)));
    const share = volume(id, (100 * percent) / (100 - percent));
    return share < Math.min(...ends) - 0.005 || share > Math.max(...ends) + 0.005 ? [id] : [];
  });
  // the trade's Venetian red lay on gypsum or chalk (Uebele 1913), which wants less oil than clay
  expect(outside).toEqual(['PR102']);
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
