/** A record may name a paint nobody knows the composition of: its films count like a colour that is unknown. */
import { expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { findings } from '../../language/src/rules/check.ts';
import { study } from '../../language/src/study/build.ts';

const read = (layers: string) => {
  const plan = readPlan(
    `record "Panel, invented"
paint dark = unknown in oil
paint darker = unknown
paint white = PW1 in linseed
mix grey = 2 white + 1 dark
support oak-panel 30 x 40 cm
ground priming { material chalk-glue }
${layers}
`,
    'file:///r.paintplan',
  );
  return { plan, study: study(plan), said: findings(plan, study(plan), { strict: true }) };
};

test('it is read, with its binder or without', () => {
  const { plan } = read('');
  expect(plan.problems).toEqual([]);
  expect(plan.paints.map((p) => [p.name, p.formula, p.binder?.name, p.unknown !== undefined])).toEqual([
    ['dark', undefined, 'oil', true],
    ['darker', undefined, undefined, true],
    ['white', expect.anything(), 'linseed', false],
  ]);
});

test.each(['dark', '2 white + 1 darker', 'grey'])('colour %s is told like colour unknown', (colour) => {
  const of = (words: string) => {
    const { study: s, said } = read(`layer a { colour ${words}   film 20 µm }`);
    const seen = s.layers[1]!.colours()[0]!;
    return {
      composition: s.layers[1]!.composition,
      lab: seen.lab,
      radius: seen.radius,
      confidence: seen.confidence,
      firm: said.filter((f) => f.severity !== 'hint' && f.severity !== 'info').map((f) => f.message),
    };
  };
  expect(of(colour)).toEqual(of('unknown'));
  expect(of(colour).composition).toBeUndefined();
});

test('the study says why', () => {
  const { study: s } = read('layer a { colour grey }');
  expect(s.layers[1]!.assumptions.map((a) => `${a.field} ${a.value}`)).toContain('colour unknown');
});
