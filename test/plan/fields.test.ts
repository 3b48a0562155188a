/**
 * One table of fields: whatever a plan or a record may say, reading, comparing, JSON and the canonical form hold it. For
 * every row two values; the one changed into the other must show everywhere.
 */
import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { layerFacts, stated, wordsOf } from '../../language/src/plan/stated.ts';
import { buildReport } from '../../language/src/report/build.ts';
import { compare, isSame } from '../../language/src/report/compare.ts';
import { studyJson } from '../../language/src/study/json.ts';
import { type Family, families } from '../../language/src/syntax/families.ts';
import type { Field, ValueKind } from '../../language/src/syntax/fields.ts';
import { format } from '../../language/src/syntax/format.ts';
import { fieldsOf } from '../../language/src/syntax/words.ts';

const analyse = (text: string) => {
  const { plan, study, findings } = createAnalyser()(text, 'file:///a.paintplan');
  return { plan, study, findings: findings() };
};
type Read = ReturnType<typeof analyse>;
const json = (read: Read) => JSON.stringify(studyJson(read.study, 'a.paintplan', []));
/** What the JSON says the text states, without anything computed. */
const statedJson = (read: Read) => {
  const all = studyJson(read.study, 'a.paintplan', []);
  return JSON.stringify([all.stated, all.layers.map((l) => l.stated)]);
};
const report = (read: Read) => JSON.stringify(buildReport(read.study, [], () => ''));

/** Two values of each kind for a row, as the text has them. */
function values(row: Field & { readonly word: string }): readonly [string, string] {
  const { usual = '' } = row.unit ? (families[row.unit] as Family) : {};
  // a wait that tells in the calendar
  const figures =
    usual === 'days' ? (['200 days', '300 days'] as const) : ([`2 ${usual}`, `3 ${usual}`] as const);
  const [first = '', second = ''] = row.choices ?? [];
  const of: Readonly<Record<ValueKind, readonly [string, string]>> = {
    figure: figures,
    film: ['8 µm', 'unknown'],
    day: ['2027-02-01', '2027-02-03'],
    years: ['1800..1820', '1850'],
    text: ['"one"', '"two"'],
    note: ['"one"', '"two"'],
    choice: [first, second],
    choices: [first, `${first}, ${second}`],
    area: ['sky', 'sea'],
    areas: ['sky', 'sky, sea'],
    extent: ['sky', 'land'],
    preparation: ['oil-out with walnut', 'oil-out with linseed'],
    formula: ['blue', '2 blue + 1 white'],
    layerColour: ['2 blue + 1 white', 'unknown'],
    colour: ['#102030', '#102031'],
    measured: ['#102030 in sky', '#102030 in sea'],
    liquid: ['20 % lean', '20 % linseed'],
    material: row.role === 'resin' ? ['damar', 'unknown'] : ['chalk-glue', 'unknown'],
    ingredient: ['PY43', 'PB29'],
    light: ['150 lux 3000 hours per year', '150 lux 2000 hours per year'],
    price: ['12.50 EUR', '12.50 GBP'],
    swatch: row.word === 'tint' ? ['1:4 PW6 #c59a8c', '1:5 PW6 #c59a8c'] : ['#7a2b1d', '#7a2b1e'],
    allow: ['oily-rags because "one"', 'oily-rags because "two"'],
    unknown: ['unknown', 'unknown'],
  };
  return of[row.value];
}

const head = (kind: 'plan' | 'record') =>
  `${kind} "A"\narea sky 50 %\narea sea 50 %\ngroup land = sky, sea\npaint blue = PB29 in linseed\npaint white = PW6 in linseed\nmedium lean = 60 % turpentine + 40 % linseed\n`;
const BLOCKS = {
  layer: (kind: 'plan' | 'record', field: string) =>
    `${head(kind)}layer below { colour white }\nglaze mist { ${field}${/^(?:wait|after) /.test(field) ? '   colour blue' : ''} }\nglaze above { colour white }\n`,
  studio: (kind: 'plan' | 'record', field: string) => `${head(kind)}studio { ${field} }\n`,
  pigment: (kind: 'plan' | 'record', field: string) => `${head(kind)}pigment mine like PY43 { ${field} }\n`,
};

/** A text and the same with one value changed. */
const pairs: (readonly [string, string, string])[] = [];
for (const block of ['layer', 'studio', 'pigment'] as const)
  for (const row of fieldsOf(block)) {
    const [a, b] = values(row);
    for (const kind of ['plan', 'record'] as const) {
      if ((row.only ?? kind) !== kind || (block === 'studio' && kind === 'record')) continue;
      if (kind === 'plan' && [a, b].includes('unknown') && row.value !== 'film') continue;
      pairs.push([
        `${kind}, ${block}: ${row.word}`,
        BLOCKS[block](kind, `${row.word} ${a}`),
        BLOCKS[block](kind, `${row.word} ${kind === 'plan' && row.value === 'film' ? '9 µm' : b}`),
      ]);
    }
  }
const more = (kind: 'plan' | 'record', name: string, a: string, b: string) =>
  pairs.push([`${kind}, ${name}`, `${head(kind)}${a}\n`, `${head(kind)}${b}\n`]);
more('plan', 'start', 'start 2027-01-11', 'start 2027-01-12');
more('record', 'made', 'made 1640..1660', 'made 1640..1661');
more('plan', 'note', 'note "one"', 'note "two"');
more('plan', 'allow', 'allow oily-rags because "one"', 'allow oily-rags because "two"');
more('plan', 'support', 'support linen 40 x 50 cm', 'support linen 40 x 51 cm');
more('record', 'support unknown', 'support linen 40 x 50 cm', 'support unknown 40 x 50 cm');
more('plan', 'area', 'area moon 5 %', 'area moon 6 %');
more('plan', 'group', 'group all = sky', 'group all = sky, sea');
more('plan', 'pigment', 'pigment mine like PY43', 'pigment mine like PY42');
more('plan', 'paint', 'paint red = PR101 in linseed', 'paint red = PR101 in walnut');
more('plan', 'oil', 'paint red = PR101 in linseed 30 % oil', 'paint red = PR101 in linseed 31 % oil');
more('plan', 'tube', 'paint red = PR101 in linseed tube 40 ml', 'paint red = PR101 in linseed tube 37 ml');
more('plan', 'price', 'paint red = PR101 in linseed price 9 EUR', 'paint red = PR101 in linseed price 9 GBP');
more('record', 'paint unknown', 'paint red = unknown in oil', 'paint red = PR101 in oil');
more('plan', 'medium', 'medium rich = 1 linseed', 'medium rich = 1 walnut');
more('plan', 'mix', 'mix pale = 1 blue + 2 white', 'mix pale = 1 blue + 3 white');
more('plan', 'mix target', 'mix pale = blue target #102030', 'mix pale = blue target #102031');
more(
  'plan',
  'mix within',
  'mix pale = blue target #102030 within 3',
  'mix pale = blue target #102030 within 4',
);
more('plan', 'target', 'target sky #102030', 'target sea #102030');
more('plan', 'target colour', 'target sky #102030', 'target sky #102031');
more('plan', 'target within', 'target sky #102030 within 3', 'target sky #102030 within 4');
const layer = 'glaze mist { colour blue }\n';
more('record', 'sample', `${layer}sample S1 in sky { mist 8 µm }`, `${layer}sample S1 in sea { mist 8 µm }`);
more('record', 'sample film', `${layer}sample S1 { mist 8 µm }`, `${layer}sample S1 { mist 9 µm }`);
more('record', 'a new sample', layer, `${layer}sample S1 { mist 8 µm }`);
more(
  'record',
  'order in a sample',
  `${layer}glaze haze { colour white }\nsample S1 { mist 8 µm\n haze 9 µm }`,
  `${layer}glaze haze { colour white }\nsample S1 { haze 9 µm\n mist 8 µm }`,
);

describe.each(pairs)('%s', (_, before, after) => {
  const [a, b] = [analyse(before), analyse(after)];
  test('is read', () => {
    expect([...a.plan.problems, ...b.plan.problems]).toEqual([]);
  });
  test('is compared', () => {
    expect(isSame(compare(a, b)), 'changed').toBe(false);
    const { layers, declarations } = compare(a, b);
    expect([...layers.changed, ...declarations].length, 'told by what is stated').toBeGreaterThan(0);
    expect(isSame(compare(b, analyse(`\n${after} // a comment`))), 'a comment').toBe(true);
  });
  test('is in the JSON of what is stated', () => {
    expect(statedJson(a)).not.toBe(statedJson(b));
    expect(json(a)).not.toBe(json(b));
  });
  test('is in the report', () => {
    expect(report(a)).not.toBe(report(b));
  });
  test('is kept by the canonical form', () => {
    const formatted = format(before);
    expect('text' in formatted && statedJson(analyse(formatted.text))).toBe(statedJson(a));
  });
});

test('what is read is said again in words the language reads', () => {
  const said = (read: Read) => [...stated(read.plan)].map((s) => s.facts.map(wordsOf));
  for (const [name, text] of pairs) {
    const read = analyse(text);
    const facts = read.plan.layers.filter((l) => l.name === 'mist').flatMap(layerFacts);
    // notes, reasons and evidence stand in quotes
    if (facts.length === 0 || facts.some((f) => f.row.repeatable)) continue;
    const fields = facts.map((f) => `${f.word} ${wordsOf(f)}`).join('\n');
    const again = analyse(text.replace(/glaze mist \{[^}]*\}/, `glaze mist { ${fields} }`));
    expect(again.plan.problems, name).toEqual([]);
    expect(said(again), name).toEqual(said(read));
  }
});

test('units, spacing, the spelling of a group and coats 1 do not count', () => {
  const plan = (fields: string) =>
    analyse(`${head('plan')}layer below { on land colour white }\nglaze mist { colour blue ${fields} }\n`);
  const same = (a: string, b: string) => expect(isSame(compare(plan(a), plan(b))), `${a} | ${b}`).toBe(true);
  same('film 8 µm', 'film 0.008 mm');
  same('wait 14 days', 'wait 2 weeks');
  same('', 'coats 1');
  same('wipe-out land', 'wipe-out sea, sky');
  same('film 8 µm\n\n  wait 3 days', 'wait 3 days   film 8 µm');
});

test('layers and declarations that share a name are both compared', () => {
  const two = (film: string) =>
    analyse(`${head('plan')}glaze mist { colour blue film 8 µm }\nglaze mist { colour blue film ${film} }\n`);
  expect(isSame(compare(two('9 µm'), two('10 µm')))).toBe(false);
  const targets = (css: string) => analyse(`${head('plan')}target sky #102030\ntarget sky ${css}\n`);
  expect(isSame(compare(targets('#102031'), targets('#102032')))).toBe(false);
});
