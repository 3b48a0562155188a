/** Names that are units or begin like the x of a size: they stand wherever they may be declared, or it is said there. */
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { families } from '../../language/src/syntax/families.ts';
import { nameFault } from '../../language/src/syntax/name-fault.ts';
import { isName } from '../../language/src/syntax/terminals.ts';

const units = [
  ...new Set([
    ...Object.values(families).flatMap((f) => Object.keys(f.units)),
    ...['g', 'ml', 'hour', 'month', 'um', 'C', 'F'],
  ]),
].filter((u) => isName(u) && u !== 'in');

const problems = (text: string) =>
  readPlan(text, 'file:///n').problems.map((p) => [p.place.start, p.message] as const);
const formulas = (name: string) =>
  `\npaint ok = PB29 in linseed\nlayer one { colour ${name} }\nlayer two { colour 2 ${name} + 1 ok }\nmix three = ok + ${name}\n`;
const declaring = (name: string) => [
  `paint ${name} = PB29 in linseed`,
  `mix ${name} = ok`,
  `pigment ${name} like PY43`,
  `medium ${name} = linseed`,
];

describe.each(units)('%s', (unit) => {
  test('is a name of areas, groups, layers and samples, wherever those are named', () => {
    expect(
      problems(
        `record "r"\narea ${unit} 20 %\narea sea 10 %\nlayer a { on sea, ${unit} colour #fff measured #fff in ${unit} }\nlayer b { on sea except ${unit} colour #fff wipe-out ${unit} }`,
      ),
    ).toEqual([]);
    expect(
      problems(`record "r"\nlayer ${unit} { colour #fff }\nsample ${unit} { ${unit} 10 µm\n${unit} 8 µm }`),
    ).toEqual([]);
    expect(problems(`area a 10 %\ngroup ${unit} = a\nlayer b { on ${unit} }\ntarget ${unit} #fff`)).toEqual(
      [],
    );
  });
  test.each(declaring(unit))('%s says so there, with a name to take instead', (text) => {
    const [first] = problems(text + formulas(unit));
    expect(first).toEqual([text.indexOf(unit, text.indexOf(' ')), nameFault(unit, true)]);
    expect(first?.[1]).toContain(`‘the-${unit}’`);
    const better = (text + formulas(unit))
      .replaceAll(` ${unit} `, ` the-${unit} `)
      .replaceAll(` ${unit}\n`, ` the-${unit}\n`);
    expect(problems(better)).toEqual([]);
  });
});

describe.each(['x', 'x2', 'x2-warm'])('%s', (name) => {
  test.each([
    `area ${name} 20 %`,
    `layer ${name} { colour #fff }`,
    `group ${name} = sea`,
    ...declaring(name),
  ])('%s says so there, with a name to take instead', (text) => {
    const found = problems(`area sea 10 %\n${text}`);
    expect(found).toEqual([[14 + text.indexOf(name, text.indexOf(' ')), nameFault(name, true)]]);
    expect(found[0]?.[1]).toContain(`‘the-${name}’`);
    expect(
      problems(`area sea 10 %\npaint ok = PB29 in linseed\n${text.replace(` ${name} `, ` the-${name} `)}`),
    ).toEqual([]);
  });
  test('where it is mixed, too', () => {
    expect(problems(`layer a { colour 2 ${name} + PB29 }`)).toEqual([[19, nameFault(name, true)]]);
  });
});

test('a size keeps its x, and grams their place', () => {
  expect(problems('support linen 40x50 cm\nsupport')).toHaveLength(1);
  for (const size of ['40x50', '40 x50', '40x 50', '40 × 50'])
    expect(problems(`support linen ${size} cm`)).toEqual([]);
  expect(problems('mix a = 2 g')).toEqual([[11, 'After ‘g’ I expected a paint.']]);
});
