/** The data's own number: it moves when a figure moves, and is said once. */
import { expect, test } from 'vitest';
import { changedTables, nextVersion, readRecord, tableHashes } from '../../language/build/data-version.ts';
import { dataRecord, dataVersion } from '../../language/src/materials/version.ts';

test('no table changed without the number being raised', async () => {
  const changed = changedTables(await tableHashes(), readRecord().tables);
  expect(
    changed,
    `Figures changed in ${changed.join(', ')}. Give the data its next number and say why: node language/build/data-version.ts "what changed" (or --unreleased, where no release has carried ${dataVersion} yet).`,
  ).toEqual([]);
});

test('a changed, a new and a lost table are each told', () => {
  expect(changedTables({ a: '1', b: '2', c: '3' }, { a: '1', b: '9', d: '4' })).toEqual(['b', 'c', 'd']);
});

test.each([
  ['2026.11', '2026-12-01', '2026.12'],
  ['2026.11', '2026-11-30', '2026.11.1'],
  ['2026.11.1', '2026-11-30', '2026.11.2'],
  ['2026.12.3', '2027-01-02', '2027.1'],
])('after %s comes, on %s, %s', (version, day, next) => {
  expect(nextVersion(version, day)).toBe(next);
});

test('the record is whole: number, day, licence, attributions, changes', () => {
  expect(dataVersion).toMatch(/^\d{4}\.\d{1,2}(\.\d+)?$/);
  expect(dataRecord.changes[0]).toMatchObject({ version: dataVersion, date: dataRecord.date });
  expect(Number.isNaN(Date.parse(dataRecord.date))).toBe(false);
  expect(dataRecord.licence).toBeTruthy();
  for (const a of dataRecord.attributions)
    expect(Object.values(a).every((words) => words.length > 3)).toBe(true);
});
