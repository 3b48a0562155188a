/** One slip of the pen in a sound plan gives one finding: what merely follows from an impossible figure is not told. */
import { expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { findings } from '../../language/src/rules/check.ts';
import { study } from '../../language/src/study/build.ts';

const sound = `plan "Bay in the afternoon, invented"
start 2027-01-11
studio {
  temperature 18 °C
  humidity 55 %
  room 40 m³
  air-changes 2 per hour
  session 3 hours
  light 150 lux 3000 hours per year
}
support linen 50 x 40 cm
area sky 60 %
area sea 40 %
pigment tube like PB29 {
  density 2.4 g/cm³
  oil-absorption 30 g/100g
}
paint blue = tube in linseed 25 % oil
paint white = 9 PW6 + 1 PY42 in linseed
medium lean = 60 % turpentine + 40 % linseed
medium rich = 20 % turpentine + 20 % alkyd + 60 % stand-oil
mix grey = 3 white + 1 PBk9 target #9a9a98 within 30
size glue { material glue }
ground priming { material acrylic wait 14 days }
underlayer grisaille {
  on sky, sea
  colour grey
  medium 20 % lean
  film 25 µm
  coats 1
  wait 14 days
}
glaze first {
  on sky
  prepare abrade
  prepare oil-out with linseed
  colour blue
  medium 65 % rich
  film 8 µm
  coats 2
  wait 7 days
}
varnish final { resin damar after 9 months }
target sky lab(40 5 -40) within 60
`;

function told(text: string): string[] {
  const plan = readPlan(text, 'file:///x.paintplan');
  return findings(plan, study(plan), { strict: true })
    .filter((f) => f.severity !== 'hint')
    .map((f) => `${f.severity} ${f.rule}`);
}

const before = told(sound);

test('the plan is sound', () => {
  expect(before).toEqual(['info oily-rags']);
});

test.each([
  ['film 8 µm', 'film -8 µm', 'film 0 µm', 'film 8 mm', 'film 8 cm', 'film 80000 µm'],
  ['film 25 µm', 'film -25 µm', 'film 25 mm', 'film 0 µm'],
  ['medium 65 % rich', 'medium 500 % rich', 'medium 650 % rich', 'medium -65 % rich'],
  ['medium 20 % lean', 'medium 200 % lean', 'medium -20 % lean'],
  ['coats 2', 'coats 0', 'coats -2', 'coats 2.5', 'coats 5000'],
  ['coats 1', 'coats 0'],
  ['temperature 18 °C', 'temperature 180 °C', 'temperature -180 °C', 'temperature 64 °C'],
  ['humidity 55 %', 'humidity 550 %', 'humidity -5 %'],
  ['room 40 m³', 'room 0 m³', 'room -40 m³'],
  ['air-changes 2 per', 'air-changes -2 per', 'air-changes 2000 per'],
  ['session 3 hours', 'session 0 hours', 'session 300 hours', 'session -3 hours'],
  ['light 150 lux', 'light -150 lux', 'light 1500000 lux'],
  ['3000 hours per', '30000 hours per', '-3000 hours per'],
  ['linen 50 x 40 cm', 'linen 0 x 40 cm', 'linen 50000 x 40 cm', 'linen 50 x 40 m'],
  ['area sky 60 %', 'area sky 0 %', 'area sky -60 %', 'area sky 600 %', 'area sky 160 %'],
  ['density 2.4', 'density 0', 'density -2', 'density 240'],
  ['oil-absorption 30 g', 'oil-absorption 0 g', 'oil-absorption -30 g', 'oil-absorption 3000 g'],
  ['linseed 25 % oil', 'linseed 250 % oil', 'linseed -25 % oil', 'linseed 100 % oil'],
  ['9 PW6 + 1 PY42', '0 PW6 + 1 PY42', '9 PW6 + 0 PY42'],
  ['3 white + 1 PBk9', '0 white + 1 PBk9'],
  ['60 % turpentine + 40 %', '60 % turpentine + 0 %'],
  ['within 30', 'within 0'],
  ['within 60', 'within -1'],
  ['wait 14 days }', 'wait -14 days }', 'wait 1400 years }'],
  ['  wait 7 days', '  wait -7 days'],
  ['after 9 months', 'after -9 months', 'after 900 years'],
] as [string, ...string[]][])('%s', (right, ...slips) => {
  expect(sound).toContain(right);
  for (const slip of slips)
    expect(told(sound.replace(right, slip)).sort(), slip).toEqual([...before, 'error out-of-range'].sort());
});

test.each([
  ['60 % turpentine + 40 %', '60 % turpentine + 400 %', 'error parts-not-100'],
  ['20 % alkyd + 60 %', '20 % alkyd + 600 %', 'error parts-not-100'],
  ['like PB29', 'like PB290', 'error unknown-pigment'],
  ['colour blue', 'colour blu', 'error unknown-name'],
  ['film 8 µm', 'film thick', 'error syntax'],
])('%s as %s', (right, slip, rule) => {
  expect(told(sound.replace(right, slip)).sort()).toEqual([...before, rule].sort());
});

test('a figure that is allowed is computed with', () => {
  const text = sound.replace(
    'film 8 µm',
    'film 8 mm\n  allow out-of-range because "a relief of paint, on purpose"',
  );
  expect(told(text)).toContain('warning thick-fat-film');
});
