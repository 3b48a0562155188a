/** A row of a table can be read by itself: the ids of its sources are words, and no source is left over. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const tables = new URL('../../language/src/materials/tables/', import.meta.url);
const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, tables), 'utf8'));
const ids = Object.keys(read('sources.json') as object);

function* strings(value: unknown): Generator<string> {
  if (typeof value === 'string') yield value;
  else if (value !== null && typeof value === 'object')
    for (const inside of Object.values(value)) yield* strings(inside);
}

test.each(ids.map((id) => [id]))('%s is made of words', (id) => {
  expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  expect(id).toMatch(/[a-z]{3}|^ec-|^as-/);
  expect(id.length).toBeLessThanOrEqual(64);
});

test('every source is named by some figure', () => {
  const named = new Set<string>();
  for (const name of readdirSync(tables))
    if (name.endsWith('.json') && name !== 'sources.json') for (const s of strings(read(name))) named.add(s);
  expect(ids.filter((id) => !named.has(id))).toEqual([]);
});
