/** What was found at sources stands in the table, or the page tells why it does not. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTable } from '../../language/build/optics/csv.ts';
import { decisions } from '../../language/build/pigment/decided.ts';
import { USUAL } from '../../language/build/pigment/usual.ts';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import type { Figure, Pigment, Source, Statement } from '../../language/src/materials/types.ts';

const pigments = new Map(allPigments().map((p) => [p.id, p]));
const seen = ({ mark }: Source): boolean => mark === 'published' || mark === 'second-hand';

describe('decisions', () => {
  test.each(decisions.map((d) => [`${d.of.join(', ')}: ${d.field}`, d] as const))('%s', (_, d) => {
    for (const id of d.of) {
      const pigment = pigments.get(id);
      expect(pigment, id).toBeDefined();
      expect(Object.keys(pigment!), d.field).toContain(d.field);
    }
    for (const words of [d.was, d.found, d.why]) expect(words.length).toBeGreaterThan(2);
  });

  test('what changed no longer stands as it was', () => {
    for (const d of decisions.filter((e) => !e.kept && e.field === 'density'))
      for (const id of d.of) {
        const { low, high } = pigments.get(id)!.density;
        expect(`${low}–${high}`, id).not.toBe(d.was.split(',')[0]);
      }
  });
});

test('the eighty are eighty, each in the catalogue', () => {
  expect(new Set(USUAL).size).toBe(80);
  expect(USUAL.filter((id) => !pigments.has(id))).toEqual([]);
});

/** Issue conflicts settled by sources anybody can look up: the harmonised list, handbook densities. */
describe('figures that were decided', () => {
  const of = (id: string) => pigments.get(id)!;
  test('malachite is the copper carbonate–hydroxide of CLP 029-020-00-8', () => {
    expect(of('PG39').classification?.value).toContain('H302,H332');
  });
  test('chromium(VI) compounds sensitise the skin: H317, CLP 024-017-00-8', () => {
    for (const id of ['PO21', 'PG15']) expect(of(id).classification?.value, id).toContain('H317');
  });
  test('densities hold those of the compound (CRC Handbook; Mineralogy Database)', () => {
    const compounds: readonly (readonly [string, number])[] = [
      ['PB35', 6.3],
      ['PB33', 4.85],
      ['PR108', 4.83],
      ['PY37', 4.83],
      ['PB28', 4.37],
      ['PG23', 3],
      ['PG50', 5.1],
      ['PY41', 6.58],
      ['PY184', 6.95],
    ];
    for (const [id, density] of compounds) {
      expect(of(id).density.low, id).toBeLessThanOrEqual(density);
      expect(of(id).density.high, id).toBeGreaterThanOrEqual(density);
    }
  });
  test('phthalocyanines, pyrroles and perylenes are neutral, and uncertain', () => {
    for (const id of ['PB15:3', 'PG7', 'PR254', 'PR179', 'PBk31']) {
      expect(of(id).drying.value, id).toBe('neutral');
      expect(of(id).drying.source.text, id).toMatch(/uncertain/);
    }
  });
  test('ASTM classes and rub-outs stay from memory, save what was read', () => {
    const remembered = (sources: readonly (Source | undefined)[]) =>
      sources.filter((s) => s?.mark === 'memory').length;
    expect(remembered(allPigments().map((p) => p.lightfastness?.source))).toBeGreaterThan(130);
    expect(remembered(allPigments().map((p) => p.oilAbsorption.source))).toBeGreaterThan(160);
  });
});

interface Row {
  readonly pigment: string;
  readonly variety: string;
  readonly field: string;
  readonly low: string;
  readonly high: string;
  readonly text: string;
  readonly source: string;
  readonly mark: string;
}

/** The file's names for what the bare code means. */
const BARE: Readonly<Record<string, string>> = { 'PB29 synthetic': 'PB29', 'PB30 natural': 'PB30' };
const idOf = ({ pigment, variety }: Row): string => {
  const id = variety ? `${pigment} ${variety}` : pigment;
  return BARE[id] ?? id;
};

const covers = (figure: Figure | undefined, row: Row): boolean =>
  figure !== undefined &&
  seen(figure.source) &&
  figure.low <= Number(row.low) + 0.005 &&
  figure.high >= Number(row.high) - 0.005;

/** Three lists of one book, told apart. */
const LISTS: readonly (readonly [RegExp, string])[] = [
  [/list of the stability/, 'north light'],
  [/experiments with oil-paints/, 'oil paints of 1880'],
  [/trial of water-colour/, 'water colours, four years'],
];
/** Author, work or list, as both texts name it. */
const work = (text: string): string =>
  LISTS.find(([named]) => named.test(text))?.[1] ?? /^[\p{L}-]+(?: [\p{L}-]+)?/u.exec(text)?.[0] ?? text;
const names = (statements: readonly (Statement | undefined)[], row: Row): boolean =>
  statements.some((s) => s !== undefined && seen(s.source) && s.source.text.includes(work(row.source)));

function inTable(p: Pigment, row: Row): boolean {
  switch (row.field) {
    case 'density':
    case 'refractiveIndex':
      return covers(p[row.field], row);
    case 'paintOil':
      return [p.paintOil, p.paintOilAlso].some((f) => covers(f, row));
    case 'transparency':
    case 'drying':
    case 'lightfastness': {
      const said = p[row.field];
      const aClass = /^(semi-)?(opaque|transparent)$|^(strong )?(drier|retarder)$|^neutral$|^[IV]+$/.test(
        row.text,
      );
      return said !== undefined && seen(said.source) && (!aClass || said.value === row.text);
    }
    case 'lightfastnessNote':
      return names([p.lightfastnessNote, ...(p.light ?? [])], row);
    case 'incompatibilities':
      return names([p.incompatibilities], row);
    case 'used': {
      const years = [p.used.from, ...Object.values(p.dates ?? {}).map((d) => d.year)];
      const near = years.some((y) => y !== undefined && Math.abs(y - Number(row.low)) <= 10);
      return row.low ? near : seen(p.used.source);
    }
    case 'hazards': {
      const hazards = row.text.startsWith('none') ? [] : row.text.split(' — ')[0]!.split(', ');
      return seen(p.hazardsSource) && hazards.join() === p.hazards.join();
    }
    case 'classification': {
      const codes = row.text.match(/H\d{3}\w*/g) ?? [];
      const said = p.classification;
      return said !== undefined && seen(said.source) && codes.every((code) => said.value.includes(code));
    }
    case 'composition': {
      const formula = /; (C\d+H\d+\w*)(?= \/|$)/.exec(row.text)?.[1] ?? '';
      return seen(p.composition.source) && p.composition.value.includes(formula);
    }
    default:
      return false;
  }
}

const told = (row: Row): boolean =>
  decisions.some(
    ({ of, field }) =>
      of.includes(idOf(row)) &&
      (field === row.field || (field === 'light' && row.field === 'lightfastnessNote')),
  );
const contradicts = (row: Row): boolean => {
  const p = pigments.get(idOf(row));
  return !(p && inTable(p, row)) && !told(row);
};

const FILE = ['../../../shared', '../../../../shared']
  .map((up) => new URL(`${up}/reference/materials/figures_2.csv`, import.meta.url))
  .find((url) => existsSync(url));

describe('figures read at their sources (shared/reference/materials/figures_2.csv)', () => {
  if (!FILE) {
    test('are not beside this clone: the comparison row by row is left out, the tables are checked above', () => {
      expect(decisions.length).toBeGreaterThan(60);
    });
    return;
  }
  const rows = readTable(readFileSync(FILE, 'utf8')) as unknown as readonly Row[];
  const label = (row: Row) => `${idOf(row)} ${row.field}: ${row.low}–${row.high} ${row.text} (${row.source})`;

  test('every published one is in the table, or a decision tells why not', () => {
    const published = rows.filter((r) => r.mark === 'published');
    expect(published.length).toBe(610);
    expect(published.filter(contradicts).map(label)).toEqual([]);
  });

  test('of the eighty, those read second-hand too', () => {
    expect(
      rows
        .filter((r) => USUAL.includes(idOf(r)))
        .filter(contradicts)
        .map(label),
    ).toEqual([]);
  });
});
