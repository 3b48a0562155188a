/** A pigment is added in a scratch copy as DEVELOPERS.md tells it, without the raw measurements. */
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import KIN_JSON from '../../language/build/optics/kin.json' with { type: 'json' };
import type { KinRow } from '../../language/build/optics/kinship.ts';
import { fromKin } from '../../language/build/pigment/optical.ts';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import TABLE from '../../language/src/optics/tables/pigments.json' with { type: 'json' };
import { developers, example, original, scratch } from './scratch.ts';

const given = JSON.parse(example('json', '- A new pigment'));
const copy = scratch('add-pigment', ['language/src', 'language/build', 'language/docs', 'package.json']);
afterAll(copy.remove);

const KIN = KIN_JSON as unknown as readonly KinRow[];
const OPTICS = 'language/src/optics/tables/pigments.json';
const PIGMENTS = 'language/src/materials/tables/pigments.json';
const { read } = copy;

function add(pigment: unknown) {
  copy.write('new.json', typeof pigment === 'string' ? pigment : JSON.stringify(pigment));
  return copy.node('language/build/pigment/add.ts', 'new.json');
}
/** What the copy's own catalogue and optics say of a pigment. */
function known(id: string) {
  return copy.printed(`
    const { lookupPigment } = await import('./language/src/materials/catalogue.ts');
    const { opticalData } = await import('./language/src/optics/data.ts');
    const of = (id) => { const d = opticalData(id); return d && { ...d, columns: Object.values(d).filter((v) => v instanceof Float64Array).map((v) => [...v]) }; };
    console.log(JSON.stringify({ pigment: lookupPigment('${id}'), optics: of('${id}'), kin: of('PB28') }));`);
}

beforeEach(() => {
  for (const folder of ['src', 'build', 'docs']) copy.restore(`language/${folder}`);
});

describe('npm run add-pigment', { timeout: 60_000 }, () => {
  test('is the command DEVELOPERS.md names', () => {
    expect(developers).toContain('npm run add-pigment -- FILE.json');
    expect(JSON.parse(original('package.json')).scripts['add-pigment']).toContain(
      'language/build/pigment/add.ts',
    );
  });

  test('writes every row of a pigment drawn from a kin', () => {
    const { status, stderr } = add(given);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const { pigment, optics, kin } = known('example-blue');
    expect(pigment).toMatchObject({ kind: 'found', pigment: { names: ['example blue'] } });
    expect(optics).toMatchObject({ confidence: 'D' });
    // In the middle of the spectrum, moved by one band towards the blue and 0.8 times as strong; it is half-clear, so it
    // scatters no more than such pigments do, 0.126 per µm, however much its kin does.
    const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v / values.length, 0);
    expect(mean(kin.columns[1])).toBeGreaterThan(0.2);
    expect(mean(optics.columns[1])).toBeCloseTo(0.126, 3);
    for (let b = 5; b < 25; b++) {
      expect(optics.columns[0][b] / (0.8 * kin.columns[0][b + 1])).toBeCloseTo(1, 1);
      expect(optics.columns[1][b] / kin.columns[1][b + 1] / (0.126 / mean(kin.columns[1]))).toBeCloseTo(1, 1);
    }
    expect(read('language/build/optics/kin.json')).toContain('"id":"example-blue"');
    expect(read('language/docs/data.md')).not.toBe(original('language/docs/data.md'));
    expect(add(given)).toMatchObject({ status: 2 });
  });

  test('draws from a kin as deriving the table does: every row of kin.json comes out as shipped', () => {
    expect(KIN.length).toBeGreaterThan(20);
    for (const { id, ...kin } of KIN) {
      const shipped = TABLE.pigments.find((p) => p.id === id)!;
      const transparency = allPigments().find((p) => p.id === id)!.transparency.value;
      const row = fromKin(id, { why: 'as before', ...kin }, transparency) as typeof shipped;
      expect(row).toMatchObject({ class: 'D', source: shipped.source, note: shipped.note });
      // a rounded kin, moved and multiplied, and rounded again
      expect(Math.abs(row.residual - shipped.residual), `residual of ${id}`).toBeLessThan(0.15);
      for (const column of ['a', 's'] as const)
        for (const [b, v] of row[column].entries())
          expect(Math.abs(v - shipped[column][b]!), `${column} of ${id}`).toBeLessThanOrEqual(2);
    }
  });

  test('takes measured swatches', () => {
    const flat = (r: number) => Array.from({ length: 31 }, () => r);
    const { status, stderr } = add({
      ...given,
      optics: {
        source: 'invented',
        swatches: [
          { kind: 'masstone', reflectance: flat(0.05) },
          { kind: 'tint', parts: 10, reflectance: flat(0.4) },
        ],
      },
    });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const { optics } = known('example-blue');
    expect(optics.basis).toContain('invented');
    // An even dark grey: the masstone fixes absorption over scattering, alike in every band. Seen with 0.05 it sends back
    // 0.115 inside the paint, K/S 3.4 (Kubelka & Munk 1931), which for paint as absorbing as this is 3.7 times a/s.
    const [absorbs, scatters] = optics.columns;
    for (let b = 0; b < 31; b++) {
      expect(absorbs[b] / scatters[b]).toBeGreaterThan(0.75);
      expect(absorbs[b] / scatters[b]).toBeLessThan(1.1);
      expect(absorbs[b] / scatters[b] / (absorbs[15] / scatters[15])).toBeCloseTo(1, 0);
    }
  });

  test.each([
    ['not JSON', '{', /cannot be read/],
    ['no optics', { pigment: given.pigment }, /"pigment" and "optics" are wanted/],
    ['an unknown kin', { ...given, optics: { ...given.optics, kin: 'PB999' } }, /‘PB999’ has no optical row/],
    [
      'an unknown pigment beside the kin',
      { ...given, optics: { ...given.optics, and: ['PB999', 0.2] } },
      /optics\.and: ‘PB999’ has no optical row/,
    ],
    [
      'a missing field',
      { ...given, pigment: { ...given.pigment, density: undefined } },
      /density is missing/,
    ],
    ['an unknown source', { ...given, sources: {} }, /id of its source is wanted/],
    [
      'a date that is none',
      { ...given, pigment: { ...given.pigment, dates: { bought: [1900, 'example-notes'] } } },
      /dates: known, sold, common, rareAfter/,
    ],
    [
      'a date without its source',
      { ...given, pigment: { ...given.pigment, dates: { sold: [1900] } } },
      /found sold: \[1900\]/,
    ],
    [
      'what is no element',
      { ...given, pigment: { ...given.pigment, elements: ['Co aluminium', '', '', 'example-notes'] } },
      /elements: symbols/,
    ],
    [
      'words of light without a source',
      { ...given, pigment: { ...given.pigment, light: [['permanent']] } },
      /light: \["words", "source"\]/,
    ],
    ['a known id', { ...given, pigment: { ...given.pigment, id: 'PB29' } }, /‘PB29’ is there already/],
    [
      'too few bands',
      { ...given, optics: { source: 'x', swatches: [{ kind: 'masstone', reflectance: [0.5] }] } },
      /31 values are wanted/,
    ],
  ])('says what is wrong and writes nothing: %s', (_, wrong, words) => {
    const before = [read(OPTICS), read(PIGMENTS)];
    const { status, stderr } = add(wrong);
    expect(status).toBe(2);
    expect(stderr).toMatch(words);
    expect(stderr).not.toContain('    at ');
    expect([read(OPTICS), read(PIGMENTS)]).toEqual(before);
  });
});
