/**
 * Random plans and records as text, repeatable by their seed: every declaration and field of the language, mostly sense,
 * some slips. Nothing here is advice.
 */
import { type Random, random } from './text.ts';

const PIGMENTS = [
  'PW1', 'PW4', 'PW6', 'PBk9', 'PBk11', 'PB29', 'PB28', 'PB15:3', 'PB32', 'PG18', 'PR101', 'PR83', 'PR108', 'PY43',
  'PY150', 'PY3', 'PBr7 burnt-sienna', 'PBr7 raw-umber', 'PBr8', 'NR9', 'PY35',
]; // biome-ignore format: a list of words
const OILS = ['linseed', 'walnut', 'poppy', 'stand-oil', 'safflower', 'alkyd'];
const LIQUIDS = [
  ...OILS, 'turpentine', 'odourless-spirit', 'white-spirit', 'damar', 'damar-varnish', 'beeswax', 'castor', 'megilp', 'copal',
]; // biome-ignore format: a list of words
const GROUNDS = ['acrylic', 'oil-ground', 'chalk-glue', 'gypsum-glue', 'half-chalk', 'alkyd-ground', 'bole'];
const SUPPORTS = [
  'linen',
  'cotton',
  'oak-panel',
  'copper',
  'aluminium',
  'paper',
  'wall',
  'glass',
  'hardboard',
];
const RESINS = ['damar', 'mastic', 'acrylic-resin', 'ketone-resin', 'beeswax'];
const PREPARATIONS = [
  'wipe', 'abrade', 'wash', 'oil-out', 'oil-out with walnut', 'oil-out with rich', 'oil-out with castor',
  'wipe with white-spirit', 'wipe with damar-varnish', 'wash with ammonia', 'wipe with potato', 'wipe with lean', 'wash with soap',
]; // biome-ignore format: a list of words
const COLOURS = ['#c9a24a', 'lab(40 4 -28)', 'lab(85 6 30)', 'rgb(200 150 60)', '#101010', '#f4f2ea'];
const FILMS = [
  'wash',
  'veil',
  'thin',
  'full',
  'impasto',
  '8 µm',
  '30 µm',
  '4..9 µm',
  '70 µm',
  '0.2 mm',
  '15',
  '8-12 µm',
  '1 mm',
];
const WAITS = ['1 day', '3 days', '12 hours', '2 weeks', '6 months', '1 year', '40 days', '3-5 days', '4'];
const KINDS = [
  'size', 'ground', 'drawing', 'imprimatura', 'underlayer', 'layer', 'layer', 'glaze', 'glaze', 'scumble', 'leaf', 'varnish',
]; // biome-ignore format: a list of words
const RULES = [
  'lean-over-fat',
  'beading-risk',
  'not-ready',
  'toxic-pigment',
  'no-such-rule',
  'opaque-in-glaz',
];
const AREAS = ['sky', 'sea', 'moon'];

const pick = <T>(next: Random, from: readonly T[]): T => from[Math.floor(next() * from.length)] as T;
const times = (next: Random, most: number): number => Math.floor(next() * (most + 1));

/** A word, now and then misspelt. */
function word(next: Random, from: readonly string[]): string {
  const right = pick(next, from);
  if (next() > 0.02 || right.length < 4) return right;
  const at = 1 + Math.floor(next() * (right.length - 2));
  return right.slice(0, at) + right.slice(at + 1);
}

function formula(next: Random, names: () => string, most = 3): string {
  const kind = pick(next, ['', '', '', ' %', ' g', 'none', 'mixed']);
  const count = 1 + times(next, most - 1);
  const whole = kind === ' %' && next() < 0.7;
  let left = 100;
  return Array.from({ length: count }, (_, i) => {
    const last = i === count - 1;
    const amount = whole && last ? left : whole ? Math.ceil(next() * (left / 2)) : 1 + times(next, 9);
    left -= amount;
    const unit = kind === 'mixed' ? pick(next, ['', ' %', ' g', ' ml']) : kind;
    return kind === 'none' ? names() : `${amount}${unit} ${names()}`;
  }).join(next() < 0.02 ? ' ' : ' + ');
}

interface Names {
  readonly areas: readonly string[];
  readonly paints: readonly string[];
  readonly mediums: readonly string[];
  readonly layers: string[];
}

const on = (next: Random, areas: readonly string[]): string => {
  const chosen = areas.filter(() => next() < 0.5);
  return [...new Set(chosen.length > 0 ? chosen : [pick(next, areas)])].join(next() < 0.02 ? ' ' : ', ');
};

function layer(next: Random, record: boolean, names: Names): string {
  const kind = pick(next, record ? [...KINDS, 'retouching', 'deposit'] : KINDS);
  const name =
    next() < 0.03 && names.layers.length > 0
      ? pick(next, names.layers)
      : `${kind}-${names.layers.length + 1}`;
  names.layers.push(name);
  const chance = (p: number, field: () => string): string[] => (next() < p ? [field()] : []);
  const colour = () =>
    next() < 0.1 ? pick(next, COLOURS) : formula(next, () => word(next, [...names.paints, ...PIGMENTS]));
  const medium = () => word(next, [...names.mediums, ...LIQUIDS]);
  const painted = !['size', 'ground', 'leaf', 'varnish', 'deposit'].includes(kind);
  const fields = [
    ...chance(0.45, () => `on ${on(next, names.areas)}${next() < 0.1 ? ` except ${pick(next, names.areas)}` : ''}`),
    ...chance(record ? 0.02 : 0.3, () => `prepare ${word(next, PREPARATIONS)}`),
    ...chance(record ? 0.01 : 0.05, () => `prepare ${word(next, PREPARATIONS)}`),
    ...chance(painted ? 0.85 : 0.15, () => `colour ${record && next() < 0.1 ? 'unknown' : colour()}`),
    ...chance(painted ? 0.55 : 0.1, () => `medium ${pick(next, [5, 10, 20, 35, 50, 65, 80, 95, 150])} % ${medium()}`),
    ...chance(kind === 'varnish' ? 0.8 : 0.02, () => `resin ${word(next, RESINS)}`),
    ...chance(kind === 'ground' ? 0.8 : ['size', 'leaf'].includes(kind) ? 0.6 : 0.03, () =>
      `material ${word(next, kind === 'size' ? ['glue', 'acrylic-size'] : kind === 'leaf' ? ['gold', 'silver'] : GROUNDS)}`),
    ...chance(0.5, () => `film ${pick(next, FILMS)}`),
    ...chance(0.2, () => `coats ${pick(next, [1, 2, 3, 5, 2.5])}`),
    ...chance(0.06, () => `wipe-out ${pick(next, names.areas)}`),
    ...chance(record ? 0.02 : 0.25, () => `wait ${pick(next, WAITS)}`),
    ...chance(record ? 0.02 : kind === 'varnish' ? 0.5 : 0.1, () => `after ${pick(next, WAITS)}`),
    ...chance(record ? 0.02 : 0.12, () => `painted 2027-0${1 + times(next, 5)}-${10 + times(next, 18)}`),
    ...chance(record ? 0.02 : 0.05, () => `dry 2027-0${1 + times(next, 5)}-${10 + times(next, 18)}`),
    ...chance(0.05, () => `measured ${pick(next, COLOURS)}${next() < 0.5 ? ` in ${pick(next, names.areas)}` : ''}`),
    ...chance(record ? 0.3 : 0.02, () => `made ${1640 + times(next, 40)}..${1640 + times(next, 60)}`),
    ...chance(record ? 0.2 : 0.02, () => 'evidence "S1"'),
    ...chance(0.05, () => `allow ${pick(next, RULES)} because "tried"`),
    ...chance(0.05, () => pick(next, ['note "soft"', 'note soft edge'])),
    ...chance(0.02, () => 'coats 2'),
  ]; // biome-ignore format: one field a line
  if (next() < 0.02)
    fields.push(pick(next, ['colur PB29', 'film', 'medium 20', 'on', 'film 8 8', 'hazard lead']));
  const short = next() < 0.5;
  const inner = short ? ` ${fields.join('  ')} ` : `\n${fields.map((f) => `  ${f}\n`).join('')}`;
  return `${kind} ${name} {${inner}}`;
}

function declarations(next: Random, record: boolean): string[] {
  const areas = next() < 0.25 ? [] : AREAS.slice(0, 1 + times(next, 2));
  const paints = ['white', 'blue', 'earth', 'dull', 'thin-mix'];
  const mediums = ['lean', 'rich'];
  const names: Names = { areas: areas.length > 0 ? areas : ['everything'], paints, mediums, layers: [] };
  const pigment = () => word(next, [...PIGMENTS, 'mine']);
  const head = [
    `${record ? 'record' : 'plan'} "Random"`,
    ...(record ? ['made 1640..1660'] : next() < 0.5 ? ['start 2027-01-11'] : []),
    ...(record || next() < 0.5 ? [] : [`studio { temperature ${pick(next, ['18 °C', '5 °C', '25 °C'])}  room ${pick(next, [12, 40])} m³  air-changes ${pick(next, [0.3, 2])} per hour  session 3 hours }`]),
    ...(next() < 0.85 ? [`support ${word(next, SUPPORTS)} 40 x 50 cm`] : []),
    ...areas.map((a) => `area ${a} ${pick(next, [20, 30, 50])} %`),
    ...(areas.length > 1 ? [`group all = ${areas.join(', ')}`] : []),
    `pigment mine like PY43 { density 3.1 g/cm³  masstone #b8862f  tint 1:4 white #d8c59a  lightfast II }`,
    `paint white = ${pick(next, ['9 PW6 + 1 PW4', 'PW1', 'PW6', 'PW4'])} in ${word(next, OILS)}`,
    `paint blue = ${pick(next, ['PB29', 'PB28', 'PB32'])} in ${word(next, OILS)}`,
    `paint earth = ${formula(next, pigment)} in ${word(next, OILS)}${next() < 0.3 ? ' 35 % oil' : ''}`,
    record && next() < 0.5 ? 'paint dull = unknown in oil' : `paint dull = ${formula(next, pigment)} in linseed`,
    `mix thin-mix = ${formula(next, () => pick(next, ['white', 'blue', 'earth']))}${next() < 0.4 ? ` target ${pick(next, COLOURS)} within 4` : ''}`,
    `medium lean = ${formula(next, () => word(next, LIQUIDS), 2)}`,
    `medium rich = ${formula(next, () => word(next, LIQUIDS))}`,
  ]; // biome-ignore format: one declaration a line
  const layers = Array.from({ length: 2 + times(next, 7) }, () => layer(next, record, names));
  const rest = [
    ...names.areas.flatMap((a) =>
      next() < 0.3 && !record ? [`target ${a} ${pick(next, COLOURS)} within 5`] : [],
    ),
    ...(record
      ? names.areas.map(
          (a, i) =>
            `sample S${i + 1} in ${a} { ${names.layers
              .filter(() => next() < 0.5)
              .map((l) => `${l}  ${pick(next, ['140 µm', '10 µm', '8..30 µm'])}`)
              .join('  ')} }`,
        )
      : []),
    ...(next() < 0.2 ? ['note "All of it invented."'] : []),
    ...(next() < 0.1 ? [`allow ${pick(next, RULES)} because "tried"`] : []),
  ];
  return [...head, ...layers, ...rest];
}

/** A random plan, or one time in four a random record. */
export function randomPlan(seed: number): string {
  const next = random(seed);
  return `${declarations(next, next() < 0.25).join('\n')}\n`;
}
