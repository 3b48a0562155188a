/** Findings of two versions of a plan: paired by rule and place. */
import { expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { compare } from '../../language/src/report/compare.ts';

const version = (text: string) => {
  const { study, findings } = createAnalyser()(text, 'file:///a.paintplan');
  return { study, findings: findings() };
};
const between = (before: string, after: string) => compare(version(before), version(after)).findings;
const body = (layers: string) =>
  `plan "A"\nsupport linen 40 x 50 cm\npaint blue = PB29 in linseed\nmedium lean = 60 % turpentine + 40 % linseed\n${layers}\n`;
const fat = (film: string, medium = 'stand-oil') =>
  `ground priming { material acrylic wait 1 weeks }\nunderlayer one { colour blue medium 60 % ${medium} film ${film} }`;

test('a finding in which only figures moved is neither new nor gone', () => {
  const found = between(body(fat('60 µm')), body(fat('70 µm')));
  expect(found).toEqual({ gained: [], lost: [], changed: [] });
});

test('a finding of another severity or in other words is told once, as changed', () => {
  const wait = (words: string) => body(fat('60 µm')).replace('wait 1 weeks', words);
  const found = between(wait('wait 2 hours'), wait('wait 5 days'));
  expect(found.gained).toEqual([]);
  expect(found.lost).toEqual([]);
  expect(found.changed).toMatchObject([{ rule: 'ground-not-cured', about: 'priming' }]);
});

test('the same rule about another layer is new', () => {
  const before = body(fat('60 µm'));
  const after = body(`${fat('60 µm')}\nunderlayer two { colour blue medium 60 % stand-oil film 60 µm }`);
  const { gained, changed } = between(before, after);
  expect(gained.filter((m) => m.includes('thick-fat-film'))).toHaveLength(1);
  expect(changed.filter((c) => c.rule === 'thick-fat-film')).toEqual([]);
});

test('a misspelt name mended into another misspelling is one change', () => {
  const { gained, lost, changed } = between(
    body('layer a { colour blu film 20 µm }'),
    body('layer a { colour blux film 20 µm }'),
  );
  expect(gained).toEqual([]);
  expect(lost).toEqual([]);
  expect(changed).toMatchObject([{ rule: 'unknown-name', about: 'a' }]);
});
