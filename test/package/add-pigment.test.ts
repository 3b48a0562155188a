/** A pigment is added in a scratch copy as DEVELOPERS.md tells it, without the raw measurements. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import KIN_JSON from '../../language/build/optics/kin.json' with { type: 'json' };
import type { KinRow } from '../../language/build/optics/kinship.ts';
import { fromKin } from '../../language/build/pigment/optical.ts';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import TABLE from '../../language/src/optics/tables/pigments.json' with { type: 'json' };

const root = new URL('../..', import.meta.url).pathname;
const told = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const example = JSON.parse(/```json\n([\s\S]*?)```/.exec(told)![1]!);
const scratch = mkdtempSync(join(tmpdir(), 'add-pigment-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const KIN = KIN_JSON as unknown as readonly KinRow[];
const OPTICS = 'language/src/optics/tables/pigments.json';
const PIGMENTS = 'language/src/materials/tables/pigments.json';
const read = (path: string) => readFileSync(join(scratch, path), 'utf8');
const node = (...args: string[]) => spawnSync(process.execPath, args, { cwd: scratch, encoding: 'utf8' });

function add(given: unknown) {
  writeFileSync(join(scratch, 'new.json'), typeof given === 'string' ? given : JSON.stringify(given));
  return node('language/build/pigment/add.ts', 'new.json');
}
/** What the copy's own catalogue and optics say of a pigment. */
function known(id: string) {
  const script = `
    const { lookupPigment } = await import('./language/src/materials/catalogue.ts');
    const { opticalData } = await import('./language/src/optics/data.ts');
    const of = (id) => { const d = opticalData(id); return d && { ...d, columns: Object.values(d).filter((v) => v instanceof Float64Array).map((v) => [...v]) }; };
    console.log(JSON.stringify({ pigment: lookupPigment('${id}'), optics: of('${id}'), kin: of('PB28') }));`;
  const { stdout, stderr } = node('--input-type=module', '-e', script);
  expect(stderr).toBe('');
  return JSON.parse(stdout);
}

beforeEach(() => {
  rmSync(join(scratch, 'language'), { recursive: true, force: true });
  for (const folder of ['src', 'build', 'docs'])
    cpSync(join(root, 'language', folder), join(scratch, 'language', folder), { recursive: true });
  cpSync(join(root, 'package.json'), join(scratch, 'package.json'));
  rmSync(join(scratch, 'node_modules'), { force: true });
  symlinkSync(join(root, 'node_modules'), join(scratch, 'node_modules'));
});

describe('npm run add-pigment', { timeout: 60_000 }, () => {
  test('is the command DEVELOPERS.md names', () => {
    expect(told).toContain('npm run add-pigment -- FILE.json');
    expect(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).scripts['add-pigment']).toContain(
      'language/build/pigment/add.ts',
    );
  });

  test('writes every row of a pigment drawn from a kin', () => {
    const { status, stderr } = add(example);
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
    expect(read('language/docs/data.md')).not.toBe(readFileSync(join(root, 'language/docs/data.md'), 'utf8'));
    expect(add(example)).toMatchObject({ status: 2 });
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
      ...example,
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
    ['no optics', { pigment: example.pigment }, /"pigment" and "optics" are wanted/],
    [
      'an unknown kin',
      { ...example, optics: { ...example.optics, kin: 'PB999' } },
      /‘PB999’ has no optical row/,
    ],
    [
      'an unknown pigment to add',
      { ...example, optics: { ...example.optics, and: ['PB999', 0.2] } },
      /optics\.and: ‘PB999’ has no optical row/,
    ],
    [
      'a missing field',
      { ...example, pigment: { ...example.pigment, density: undefined } },
      /density is missing/,
    ],
    ['an unknown source', { ...example, sources: {} }, /id of its source is wanted/],
    ['a known id', { ...example, pigment: { ...example.pigment, id: 'PB29' } }, /‘PB29’ is there already/],
    [
      'too few bands',
      { ...example, optics: { source: 'x', swatches: [{ kind: 'masstone', reflectance: [0.5] }] } },
      /31 values are wanted/,
    ],
  ])('says what is wrong and writes nothing: %s', (_, given, words) => {
    const before = [read(OPTICS), read(PIGMENTS)];
    const { status, stderr } = add(given);
    expect(status).toBe(2);
    expect(stderr).toMatch(words);
    expect(stderr).not.toContain('    at ');
    expect([read(OPTICS), read(PIGMENTS)]).toEqual(before);
  });
});
