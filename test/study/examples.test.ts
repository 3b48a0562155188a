/** Every example, and text of any kind, goes through the study; what comes out validates and is in order. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { createStudyMemo, study } from '../../language/src/study/build.ts';
import { studyJson } from '../../language/src/study/json.ts';
import { MISPLACED } from '../fuzz/text.ts';

const root = new URL('../..', import.meta.url).pathname;
const schema = JSON.parse(readFileSync(join(root, 'language/docs/study.schema.json'), 'utf8'));
const ajv = new Ajv({ allErrors: true, allowUnionTypes: true });
addFormats.default(ajv);
const validate = ajv.compile(schema);

const examples = readdirSync(join(root, 'examples'), { recursive: true, encoding: 'utf8' })
  .filter((f) => f.endsWith('.paintplan'))
  .map((f) => [f, readFileSync(join(root, 'examples', f), 'utf8')] as const);

/** Every interval inside a value, with where it stands. */
function* intervals(
  value: unknown,
  path = '',
): Generator<[string, { low: number; likely: number; high: number }]> {
  if (typeof value !== 'object' || value === null) return;
  if ('likely' in value && 'low' in value)
    yield [path, value as { low: number; likely: number; high: number }];
  else for (const [key, inner] of Object.entries(value)) yield* intervals(inner, `${path}/${key}`);
}

function judge(text: string) {
  const json = JSON.parse(
    JSON.stringify(studyJson(study(readPlan(text, 'file:///x.paintplan')), 'x.paintplan', [])),
  );
  validate(json);
  expect(validate.errors ?? []).toEqual([]);
  for (const [path, x] of intervals(json))
    expect([path, x.low <= x.likely && x.likely <= x.high]).toEqual([path, true]);
  return json;
}

describe('examples', () => {
  it.each(examples)('%s: JSON validates, every interval is in order', (_, text) => {
    judge(text);
  });
});

describe('texts out of order', () => {
  const [, still = ''] = examples.find(([f]) => f.includes('still-life'))!;
  const words = still.split(/(?<=\s)/);

  it('cut, doubled and shuffled, never break the study', () => {
    const memo = createStudyMemo();
    fc.assert(
      fc.property(fc.nat(words.length - 1), fc.nat(30), fc.constantFrom(...MISPLACED), (from, count, put) => {
        const text = [...words.slice(0, from), put, ...words.slice(from + count)].join('');
        const made = study(readPlan(text, 'file:///x.paintplan'), memo);
        expect(JSON.stringify(studyJson(made, 'x', []))).not.toMatch(/NaN|Infinity/);
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it('areas of 300 %, a room without air, a cold studio, ten thousand coats', () => {
    const json = judge(`plan "x"
start 2027-01-11
studio { temperature -40 °C room 0 m³ }
support linen 40 x 50 cm
area a 150 %
area b 150 %
paint w = PW6 in linseed
glaze g { colour w coats 10000 wait 90000 years medium 150 % turpentine film 9000 µm }
glaze h { on a colour w medium 100 % turpentine }
`);
    expect(json.layers[1].composition).toBeNull();
  });
});
