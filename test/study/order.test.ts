/**
 * The order of declarations does not matter, but for layers, which lie one on another, and for areas, which are told in
 * their order. Whatever is said is said in the same words, though lists may come in another order.
 */
import { expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { scan } from '../../language/src/syntax/scan.ts';
import { isLayerWord } from '../../language/src/syntax/words.ts';
import { tries } from '../long.ts';
import { samples, samplesHost } from '../plan/samples.ts';
import { filled, PLAN, RECORD, random, template } from './edits.ts';

const FIXED = (word: string) => isLayerWord(word) || word === 'area' || word === 'paintplan';

/** Names in a sentence may stand in another order. */
const said = (text: string): string =>
  text
    .split(/[\s,.‘’]+/)
    .sort()
    .join(' ');

/** Without places, lists in one order. */
function plain(value: unknown): unknown {
  if (typeof value === 'string') return said(value);
  if (typeof value !== 'object' || value === null) return value;
  if (ArrayBuffer.isView(value)) return Array.from(value as Float64Array);
  if (Array.isArray(value)) {
    const items = value.map(plain);
    return items.every((i) => typeof i === 'number')
      ? items
      : items.map((i) => JSON.stringify(i) ?? '').sort();
  }
  return Object.fromEntries(
    Object.entries(value).flatMap(([k, v]) =>
      k === 'place' || k === 'line' || k === 'column' || v === undefined || typeof v === 'function'
        ? []
        : [[k, plain(v)]],
    ),
  );
}

function all(text: string) {
  const { study, findings } = createAnalyser()(text, 'file:///p.paintplan', samplesHost);
  return {
    layers: study.layers.map(({ layer, composition, drying, dryFilm, assumptions, colours }) =>
      plain({ name: layer.name, composition, drying, dryFilm, assumptions, colours: colours() }),
    ),
    targets: study.areas.map((a) => plain([a.name, a.share, a.target()])),
    rest: plain([
      study.assumptions,
      study.calendar,
      study.quantities,
      study.air,
      study.permanence,
      study.cautions,
    ]),
    findings: findings({ strict: true })
      .map((f) => `${f.rule} ${f.severity} ${said(f.message)}`)
      .sort(),
  };
}

function shuffled(text: string, next: () => number): string {
  const chunks = scan(text).map((c) => ({ word: c.word, text: text.slice(c.start, c.end) }));
  const kept = chunks.filter((c) => FIXED(c.word));
  const loose = chunks.filter((c) => !FIXED(c.word));
  for (let i = loose.length - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    [loose[i], loose[j]] = [loose[j]!, loose[i]!];
  }
  // each where some declaration was, so that uses stand before and after what they name
  const order = chunks.map((c) => FIXED(c.word)).sort(() => next() - 0.5);
  return order.map((fixed) => (fixed ? kept : loose).shift()!.text).join('\n');
}

const first = (text: string) => {
  const t = template(text);
  return filled(
    t,
    t.slots.map(() => 0),
  );
};

const texts = [
  ['a plan of every field', first(PLAN)],
  ['a record', first(RECORD)],
  ...samples.map((e) => [e.name, e.text] as const),
] as const;

test.each(texts)('%s says the same with its declarations shuffled', (_, text) => {
  const next = random(11);
  const straight = all(shuffled(text, () => 0.999));
  for (let i = 0; i < tries(3, 100); i++) {
    const other = shuffled(text, next);
    expect(all(other), other).toEqual(straight);
  }
});

const BASE = `plan "Trial"
support linen 100 x 100 cm
paint white = PW6 in linseed
layer low { colour white   medium 30 % much   film 40 µm }
layer high { colour white   film 20 µm }
`;

test('brushes are cleaned in the thinner that layers use most of', () => {
  const mediums = [
    'medium little = 90 % odourless-spirit + 10 % linseed',
    'medium much = 80 % turpentine + 20 % linseed',
  ];
  const brushes = (text: string) =>
    createAnalyser()(text, 'file:///p.paintplan')
      .study.quantities!.agents.filter((a) => a.method === 'brushes')
      .map((a) => a.name);
  for (const order of [mediums, mediums.toReversed()])
    expect(brushes(BASE + order.join('\n'))).toEqual(['turpentine']);
  // what is declared and not used is not in the house
  expect(brushes(`${BASE.replace('medium 30 % much', '')}${mediums.join('\n')}`)).toEqual([]);
});

test('own pigments may be like one another, and groups hold groups, in any order', () => {
  const parts = [
    'pigment b like a',
    'pigment a like PR101 { density 5 g/cm³ }',
    'area x',
    'group g = h',
    'group h = x',
  ];
  for (const order of [parts, parts.toReversed()]) {
    const { plan } = createAnalyser()(
      `plan "Trial"\n${order.join('\n')}\nlayer l { on g   colour b }`,
      'file:///p.paintplan',
    );
    expect(plan.visible.pigments.get('b')!.pigment!.density.low).toBe(5);
    expect(plan.layers[0]!.areas).toEqual(['x']);
  }
});

test('a chain of mixes is as deep as it is, from whichever end it is read', () => {
  const mixes = ['mix m0 = 1 white + 1 PB29'];
  for (let i = 1; i < 400; i++) mixes.push(`mix m${i} = 1 m${i - 1} + 1 white`);
  const layers = ['layer low { colour m399 }', 'layer high { colour m10 }'];
  for (const order of [layers, layers.toReversed()]) {
    const { study } = createAnalyser()(
      `plan "Trial"\nsupport linen 40 x 30 cm\npaint white = PW6 in linseed\n${mixes.join('\n')}\n${order.join('\n')}`,
      'file:///p.paintplan',
    );
    expect(study.layers.map((l) => l.composition !== undefined)).toEqual([true, true]);
  }
});
