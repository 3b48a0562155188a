/** No rule throws on any text, says NaN, or hangs on a long plan. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { findings } from '../../language/src/rules/check.ts';
import { study } from '../../language/src/study/build.ts';
import { MISPLACED } from '../fuzz/text.ts';
import { tries } from '../long.ts';

const root = new URL('../..', import.meta.url).pathname;
const uri = 'file:///x.paintplan';
const texts = [
  ...readdirSync(join(root, 'examples'), { recursive: true, encoding: 'utf8' }).map((f) =>
    join(root, 'examples', f),
  ),
  ...readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' }).map((f) =>
    join(import.meta.dirname, f),
  ),
]
  .filter((f) => f.endsWith('.paintplan') && statSync(f).isFile())
  .map((f) => readFileSync(f, 'utf8'));

const judge = (text: string) => {
  const plan = readPlan(text, uri);
  // the fixes of one finding a text; fixes.test.ts tries them all
  const found = findings(plan, study(plan), { strict: true, patience: { left: 1, untried: 0 } });
  for (const f of found) {
    expect(f.message).not.toMatch(/NaN|Infinity|undefined|\[object/);
    expect(f.place.start).toBeGreaterThanOrEqual(0);
    for (const fix of f.fixes) expect(fix.edits.length).toBeGreaterThan(0);
  }
  return found;
};

const PUT = [
  ...MISPLACED,
  'film 10 mm\n',
  'on nowhere\n',
  'colour lab(0 0 0)\n',
  'colour lab(100 0 0)\n',
  'medium 100 % damar\n',
  'use "x"\n',
  'area __proto__ 5 %\n',
  'made 1900..1800\n',
  'target sky #000000\n',
];

test('plans cut, doubled, shuffled and spoiled', () => {
  const words = texts.map((t) => t.split(/(?<=\s)/));
  fc.assert(
    fc.property(
      fc.nat(texts.length - 1),
      fc.nat(),
      fc.nat(20),
      fc.nat(),
      fc.constantFrom(...PUT),
      (which, from, count, other, put) => {
        const own = words[which] as string[];
        const more = words[other % words.length] as string[];
        const at = from % (own.length + 1);
        judge([...own.slice(0, at), put, ...more.slice(other % 7, 12), ...own.slice(at + count)].join(''));
      },
    ),
    { numRuns: tries(200, 600), seed: 11 },
  );
});

describe('edges of the world', () => {
  const body = (layers: string, more = '') => `plan "x"\n${more}\nsupport linen 40 x 50 cm\n${layers}\n`;
  test.each([
    ['an empty file', ''],
    ['only a title', 'plan "x"'],
    [
      'black on black',
      body(
        'layer a { colour lab(0 0 0) }\nglaze b { colour PBk11 film 100 µm }\nglaze c { colour PBk11 film 100 µm }\ntarget everything lab(100 0 0)',
      ),
    ],
    [
      'a film of 10 mm of everything',
      body('layer a { colour PW6 + PBk11 + PB29 + PR108 film 10 mm coats 200 }'),
    ],
    ['areas of 300 %', body('layer a { colour PW6 }\ntarget a #ffffff', 'area a 150 %\narea b 150 %')],
    [
      'a room without air',
      body(
        'layer a { colour PW6 medium 100 % turpentine }',
        'studio { room 0 m³ air-changes 0 per hour session 0 hours }',
      ),
    ],
    [
      'nothing but solvent',
      body(
        'imprimatura a { medium 100 % turpentine }\nglaze b { colour PB29 medium 100 % turpentine film 0.1 µm }',
      ),
    ],
    ['mixes of themselves', body('mix a = 1 b + 1 PW6\nmix b = 1 a + 1 PW6\nglaze c { colour a }')],
    [
      'mixes of mixes of mixes',
      body(
        `${Array.from({ length: 60 }, (_, i) => `mix m${i} = 1 ${i ? `m${i - 1}` : 'PW6'} + 1 ${i ? `m${i - 1}` : 'PB29'}`).join('\n')}\nglaze g { colour m59 }`,
      ),
    ],
    [
      'a target beyond every paint',
      body('layer a { colour PW6 + PB29 + PY150 }\ntarget s color(display-p3 0 1 0)', 'area s 100 %'),
    ],
    [
      'swatches that contradict',
      'plan "x"\npigment p like PB29 { masstone #ffffff tint 1:4 PW6 #000000 over-black #ffffff at 20 µm over-white #000000 at 20 µm }\nglaze g { colour p }',
    ],
  ])('%s', (_, text) => {
    judge(text);
  });
});

test('a thousand layers are judged in no more than seconds', () => {
  const kinds = ['glaze', 'underlayer', 'scumble', 'glaze'];
  const layer = (_: unknown, i: number) =>
    `${kinds[i % 4]} l${i} { on ${i % 2 ? 'a' : 'b'}, a  colour 1 PB29 + 1 PR83  medium 60 % linseed  film ${1 + (i % 7)} µm }`;
  const text = `plan "x"
support linen 40 x 50 cm
area a 50 %
area b 50 %
${Array.from({ length: 1000 }, layer).join('\n')}
target a #334455
`;
  // a guard against hanging; figures are the benchmarks' business
  const start = performance.now();
  expect(judge(text).length).toBeGreaterThan(100);
  expect(performance.now() - start).toBeLessThan(20_000);
});
