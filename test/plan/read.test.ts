/** What each construct of the language becomes in a Plan. */
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { sample, samplesHost } from './samples.ts';

const uri = 'file:///rich.paintplan';
const rich = readPlan(sample('rich'), uri, samplesHost);
const record = readPlan(sample('rich-record'), uri, samplesHost);
const one = (text: string) => readPlan(text, uri);
const layer = (fields: string, kind = 'glaze') =>
  one(`plan "x"\narea sky 50 %\narea sea 50 %\n${kind} a { ${fields} }`).layers[0];
const exact = (value: number) => ({ low: value, likely: value, high: value });

test('a plan with every construct reads without a problem, resolved', () => {
  expect(rich.problems).toEqual([]);
  expect(rich.clashes).toEqual([]);
  const odd = JSON.stringify(rich, (k, v) =>
    k === 'kind' && ['unknown-name', 'unknown-pigment', 'needs-variety', 'misplaced'].includes(v)
      ? 'UNRESOLVED'
      : k === 'plan' || k === 'uri'
        ? undefined
        : v,
  );
  expect(odd).not.toContain('UNRESOLVED');
});

describe('the head', () => {
  test('title, description, version, start', () => {
    expect(rich).toMatchObject({
      kind: 'plan',
      title: 'Quinces beside a pewter jug',
      description: 'A test of the whole language.\nTwo lines of it.',
      language: { value: 1 },
      start: { iso: '2027-01-11', number: 20829 },
    });
  });
  test('a record and its years', () => {
    expect(record).toMatchObject({
      kind: 'record',
      title: 'Harbour view on panel, inventory 12',
      made: { from: 1640, to: 1660 },
    });
    expect(record.problems).toEqual([]);
    expect(one('record "x"\nmade 1655').made).toMatchObject({ from: 1655, to: 1655 });
  });
  test('a file without either is a palette', () =>
    expect(one('paint a = PB29 in linseed').kind).toBe('palette'));
  // 2027-01-11 is 57 years and 10 days after 1970-01-01, 14 leap days among them: 57 · 365 + 14 + 10
  test('days count from 1970-01-01', () =>
    expect(one('start 2027-01-11').start?.number).toBe(57 * 365 + 14 + 10));
  test('notes and allowances of the whole plan', () => {
    expect(rich.notes).toEqual(['A note of the whole plan.']);
    expect(rich.allows).toMatchObject([{ rule: 'oily-rags', because: 'the studio has a fire bin' }]);
  });
});

describe('studio and support', () => {
  test('figures in plain units', () => {
    expect(rich.studio).toMatchObject({
      temperature: { value: { low: 18, high: 21 }, given: 'range', unit: '°C' },
      humidity: { value: exact(0.55) },
      room: { value: exact(40), unit: 'm³' },
      airChanges: { value: exact(2) },
      session: { value: exact(3), unit: 'hours' },
      light: { lux: { value: exact(150) }, hoursPerYear: { value: exact(3000) } },
      lightSource: { value: 'D65' },
      specular: { value: 'excluded' },
    });
    expect(rich.studio.fields.map((f) => f.name)).toEqual([
      'temperature',
      'humidity',
      'room',
      'air-changes',
      'session',
      'light',
      'light-source',
      'specular',
    ]);
  });
  test('a support is height × width', () =>
    expect(rich.support).toMatchObject({
      material: { name: 'linen', is: { id: 'linen' } },
      height: { value: exact(50) },
      width: { value: exact(40) },
    }));
  test.each([
    ['50x40 cm', 50, 40],
    ['50 × 40 cm', 50, 40],
    ['50 x 40cm', 50, 40],
    ['500 x 400 mm', 50, 40],
    ['.5 x .4 m', 50, 40],
    ['20 x 16 in', 50.8, 40.64],
  ])('support linen %s', (size, height, width) => {
    const plan = one(`support linen ${size}`);
    expect(plan.problems).toEqual([]);
    expect(plan.support?.height?.value.likely).toBeCloseTo(height, 6);
    expect(plan.support?.width?.value.likely).toBeCloseTo(width, 6);
  });
});

describe('areas', () => {
  test('shares, groups, descriptions', () => {
    expect(rich.areas.map((a) => [a.name, a.share?.value.likely])).toEqual([
      ['backdrop', 0.45],
      ['table', 0.25],
      ['quince-light', 0.1],
      ['quince-shadow', 0.08],
      ['jug', 0.12],
    ]);
    expect(rich.areas[2]?.description).toBe('Where the lamp falls.');
    expect(rich.groups[0]).toMatchObject({
      name: 'quinces',
      members: [{ name: 'quince-light', known: true }, { name: 'quince-shadow' }],
    });
  });
  test('none at all is one that covers everything', () => {
    const plan = one('plan "x"\nglaze a { film thin }');
    expect(plan).toMatchObject({
      implicitArea: true,
      areas: [{ name: 'everything' }],
      layers: [{ areas: ['everything'], everywhere: true }],
    });
  });
  test('where layers lie', () => {
    const areas = (name: string) => rich.layers.find((l) => l.name === name)?.areas;
    expect(areas('grisaille')).toEqual(['quince-light', 'quince-shadow', 'jug']);
    expect(areas('body')).toEqual(['backdrop']);
    expect(areas('priming')).toHaveLength(5);
    expect(layer('on sky, sea except sea')?.areas).toEqual(['sky']);
    expect(layer('on land')?.on[0]).toMatchObject({ known: false, areas: [] });
    expect(layer('on skx')?.on[0]?.near).toEqual(['sky']);
  });
});

describe('paints, mediums, mixes', () => {
  test('a paint: pigments by mass in a binder, with its oil', () => {
    expect(rich.paints[0]).toMatchObject({
      name: 'warm-white',
      formula: {
        amounts: 'parts',
        parts: [
          {
            amount: { value: 9, kind: 'parts' },
            ingredient: { name: 'PW6', is: { kind: 'pigment', pigment: { code: 'PW6' } } },
          },
          { amount: { value: 1 } },
        ],
      },
      binder: { name: 'safflower', is: { id: 'safflower' } },
      oil: { value: { likely: 0.35 } },
    });
    expect(rich.paints[1]?.formula?.parts[0]?.ingredient).toMatchObject({
      name: 'PBr7',
      variety: { name: 'burnt-sienna' },
      is: { kind: 'pigment' },
    });
  });
  test('a medium may hold other mediums; millilitres are amounts', () => {
    expect(rich.mediums[2]?.formula).toMatchObject({
      amounts: 'ml',
      parts: [{ ingredient: { is: { kind: 'medium', medium: { name: 'rich' } } } }, {}],
    });
  });
  test('a mix with a target; mixes in mixes', () => {
    expect(rich.mixes[0]).toMatchObject({
      target: { css: '#c9a24a', valid: true },
      within: { value: { likely: 3 } },
    });
    expect(rich.mixes[1]?.formula?.parts.map((p) => [p.ingredient.is.kind, p.amount?.value])).toEqual([
      ['mix', 0.5],
      ['paint', 1.5],
    ]);
  });
  test('circles are told, not followed', () => {
    expect(one('mix a = b + c\nmix b = a\nmix c = PB29').circles.map((c) => c.names)).toEqual([
      ['a', 'b', 'a'],
    ]);
  });
  test.each([
    ['1 a + 2 b', 'parts'],
    ['a + b', 'none'],
    ['a + 2 b', 'parts'],
    ['30 % a + 70 % b', '%'],
    ['3 g a + 2 g b', 'g'],
    ['30 % a + 2 b', 'mixed'],
    ['30 % a + b', 'mixed'],
  ])('amounts of %s: %s', (text, amounts) =>
    expect(one(`mix a = ${text}`).mixes[0]?.formula?.amounts).toBe(amounts),
  );
  test('what a word turned out to be', () => {
    const is = (text: string) =>
      one(`paint white = PW6 in linseed\nmedium lean = linseed\nmix a = ${text}`).mixes[0]?.formula?.parts[0]
        ?.ingredient.is;
    expect(is('white')).toMatchObject({ kind: 'paint' });
    expect(is('whit')).toMatchObject({ kind: 'unknown-name', near: ['white'] });
    expect(is('PB29')).toMatchObject({ kind: 'pigment' });
    expect(is('PB999')).toMatchObject({ kind: 'unknown-pigment' });
    expect(is('PBr7')).toMatchObject({ kind: 'needs-variety' });
    expect(is('lean')).toMatchObject({ kind: 'misplaced', found: 'a medium' });
    expect(is('linseed')).toMatchObject({ kind: 'misplaced', found: 'a binder' });
  });
  test('a pigment of one’s own', () => {
    expect(rich.pigments[0]).toMatchObject({
      name: 'my-ochre',
      like: { name: 'PY43' },
      oilAbsorption: { value: { low: 28, high: 34 } },
      density: { value: exact(3.1) },
      lightfast: { value: 'I' },
      hazards: [{ value: 'fine-dust' }, { value: 'silica-dust' }],
      swatches: [
        { kind: 'masstone', colour: { css: '#b8862f' } },
        { kind: 'tint', tint: { parts: 4, white: { name: 'PW6' } } },
        { kind: 'over-black', film: { value: { likely: 20 } } },
        { kind: 'over-white' },
      ],
      pigment: { id: 'my-ochre', density: { low: 3.1, high: 3.1 } },
    });
  });
});

describe('layers', () => {
  const named = (name: string) => rich.layers.find((l) => l.name === name);
  test('in the order written, all kinds', () => {
    expect(rich.layers.map((l) => [l.index, l.kind])).toEqual([
      [0, 'size'],
      [1, 'ground'],
      [2, 'drawing'],
      [3, 'imprimatura'],
      [4, 'underlayer'],
      [5, 'layer'],
      [6, 'glaze'],
      [7, 'scumble'],
      [8, 'leaf'],
      [9, 'varnish'],
    ]);
    expect(record.layers.map((l) => l.kind)).toContain('retouching');
    expect(record.layers.map((l) => l.kind)).toContain('deposit');
  });
  test('every field of a glaze', () => {
    expect(named('first-warm')).toMatchObject({
      prepare: [
        { method: 'abrade' },
        { method: 'oil-out', agent: { name: 'walnut', is: { kind: 'binder' } } },
        { method: 'wipe', agent: { is: { kind: 'solvent' } } },
        { method: 'wash' },
      ],
      colour: { kind: 'formula' },
      medium: { share: { value: { likely: 0.65 } }, of: { name: 'rich', is: { kind: 'medium' } } },
      film: { value: exact(8), given: 'exact', unit: 'µm', words: '8 µm' },
      coats: { value: exact(3) },
      wipeOut: [{ name: 'quince-light' }, { name: 'jug' }],
      wait: { value: exact(3), unit: 'days' },
      notes: ['Keep the rim of light clear of colour.', 'And the second note.'],
    });
  });
  test('a known colour, a colour by its other spelling, a word for a film', () => {
    expect(named('body')?.colour).toMatchObject({
      kind: 'value',
      value: { css: 'color(xyz-d50 0.2 0.21 0.15)', valid: true },
    });
    expect(named('last-light')).toMatchObject({
      colour: { kind: 'formula' },
      medium: { of: { is: { kind: 'binder' } } },
      film: { given: 'word', value: { low: 10, high: 25 }, words: 'thin' },
      allows: [{ rule: 'lean-over-fat', because: 'only a breath of colour, dry-brushed' }],
    });
    expect(named('last-light')?.fields.map((f) => f.name)).toContain('colour');
  });
  test('what was observed', () => {
    expect(named('grisaille')).toMatchObject({
      painted: { iso: '2027-04-01' },
      dry: { iso: '2027-04-04' },
      measured: [{ colour: { css: 'lab(60 1 3)' }, in: { name: 'jug', known: true } }],
    });
    expect(record.layers[4]).toMatchObject({ evidence: [], measured: [{ in: { name: 'sky' } }] });
    expect(record.layers[3]?.evidence.map((e) => e.text)).toEqual(['S1, SEM-EDX']);
    expect(record.layers[5]?.made).toMatchObject({ from: 1880, to: 1900 });
  });
  test('unknown, in a record', () => {
    expect(record.layers[1]?.colour?.kind).toBe('unknown');
    expect(record.layers[2]?.film?.given).toBe('unknown');
    const plan = one(
      'record "x"\nsupport unknown 30 x 42 cm\nground g { material unknown   film unknown }\nvarnish v { resin unknown }',
    );
    expect(plan.problems).toEqual([]);
    expect(plan.layers[0]?.material).toMatchObject({ name: 'unknown', unknown: true });
  });
  test('resins, materials, metal', () => {
    expect(named('final')).toMatchObject({
      resin: { name: 'damar', is: { kind: 'resin' } },
      after: { value: { likely: 9 * 30.4375 } },
    });
    expect(named('seal')?.material?.is).toBeDefined();
  });
  test.each([
    ['wait 12 hours', 0.5],
    ['wait 1 day', 1],
    ['wait 2 weeks', 14],
    ['wait 6 months', 6 * 30.4375],
    ['wait 1 year', 365.25],
  ])('%s is %d days', (field, days) => expect(layer(field)?.wait?.value.likely).toBeCloseTo(days, 9));
  test.each([
    ['film 8µm', 8],
    ['film 8 um', 8],
    ['film 8 μm', 8],
    ['film .5 mm', 500],
    ['film 8 µm', 8],
  ])('%s', (field, value) => expect(layer(field)?.film?.value).toEqual(exact(value)));
  test('temperatures in both scales and signs', () => {
    const t = (text: string) => one(`studio { temperature ${text} }`).studio.temperature?.value.likely;
    expect(t('-3 °C')).toBe(-3);
    expect(t('\u22123 ºC')).toBe(-3);
    expect(t('68 °F')).toBeCloseTo(20, 9);
    expect(t('20 C')).toBe(20);
    expect(t('68F')).toBeCloseTo(20, 9);
  });
  test('half-typed: nowhere rather than everywhere; called by its kind', () => {
    expect(layer('on   film 8 µm')).toMatchObject({
      areas: [],
      everywhere: false,
      film: { value: exact(8) },
    });
    const plan = one('glaze { film 8 µm }\nglaze { film 9 µm }');
    expect(plan.layers.map((l) => l.name)).toEqual(['glaze', 'glaze']);
    expect(plan.clashes).toEqual([]);
  });
  test('unknown is for records', () =>
    expect(one('plan "x"\nground g { material unknown }').problems).toMatchObject([{ rule: 'not-in-plan' }]));
  test('a field twice is a fact for its rule; the first counts', () => {
    const l = layer('film 8 µm   film 9 µm');
    expect(l?.film?.value.likely).toBe(8);
    expect(l?.fields.map((f) => f.name)).toEqual(['film', 'film']);
  });
  test('fields of the other kind of file are marked', () => {
    expect(layer('made 1640..1650')?.fields[0]?.misplaced).toBe('not-in-plan');
    expect(one('record "x"\nglaze a { wait 3 days }').layers[0]?.fields[0]?.misplaced).toBe('not-in-record');
  });
  test('where a new field would go', () => {
    const add = (text: string) => {
      const where = one(text).layers[0]?.insertField;
      return where
        ? text.slice(0, where.place.start) +
            where.before +
            'coats 2' +
            where.after +
            text.slice(where.place.end)
        : undefined;
    };
    expect(add('glaze a {\n  film 8 µm\n}')).toBe('glaze a {\n  film 8 µm\n  coats 2\n}');
    expect(add('glaze a {\r\n\tfilm 8 µm\r\n}')).toBe('glaze a {\r\n\tfilm 8 µm\r\n\tcoats 2\r\n}');
    expect(add('glaze a {\n  film 8 µm  // why\n}')).toBe('glaze a {\n  film 8 µm  // why\n  coats 2\n}');
    expect(add('glaze a { film 8 µm }')).toBe('glaze a { film 8 µm   coats 2 }');
    expect(add('glaze a {}')).toBe('glaze a { coats 2 }');
    expect(add('glaze a {\n}')).toBe('glaze a {\n  coats 2\n}');
    expect(add('glaze a { film 8 µm')).toBeUndefined();
  });
});

describe('targets and samples', () => {
  test('a target', () =>
    expect(rich.targets[0]).toMatchObject({
      in: { name: 'quince-light', known: true },
      colour: { css: 'oklch(0.7 0.1 80)', valid: true },
      within: { value: { likely: 4 } },
    }));
  test('samples: labels of every kind, layers, films', () => {
    expect(record.samples.map((s) => s.name)).toEqual(['S1', 'NB2', '3', 'edge, left']);
    expect(record.samples[0]?.layers.map((l) => [l.layer.name, l.layer.is?.kind, l.film?.words])).toEqual([
      ['priming', 'ground', '140 µm'],
      ['pink', 'imprimatura', '10 µm'],
      ['sky-first', 'layer', '26 µm'],
      ['sky-last', 'glaze', 'unknown'],
    ]);
    expect(record.samples[0]?.in).toMatchObject({ name: 'sky', known: true });
  });
});

describe('use', () => {
  test('brings in paints, with where they stand', () => {
    expect(rich.uses[0]).toMatchObject({
      path: 'rich-palette.paintplan',
      status: 'read',
      uri: 'file:///rich-palette.paintplan',
    });
    expect(rich.visible.paints.get('bone-black')).toMatchObject({
      description: 'Slow, and very black.',
      namePlace: { uri: 'file:///rich-palette.paintplan' },
    });
    expect(rich.paints.map((p) => p.name)).not.toContain('bone-black');
  });
  const host = (files: Record<string, string>) => ({
    resolve: (path: string) =>
      path.startsWith('..') ? { outside: true as const } : { uri: `file:///${path}` },
    read: (at: string) =>
      Object.hasOwn(files, at.slice(8))
        ? { text: files[at.slice(8)] as string }
        : { failed: 'missing' as const },
  });
  test('missing, outside, itself, a circle', () => {
    const files = { b: 'use "c"\npaint p = PB29 in linseed', c: 'use "b"' };
    const plan = readPlan('use "a"\nuse "../x"\nuse "b"', 'file:///me', host(files));
    expect(plan.uses.map((u) => u.status)).toEqual(['missing', 'outside', 'read']);
    expect(plan.uses[2]?.plan?.uses[0]?.plan?.uses[0]).toMatchObject({
      status: 'cycle',
      detail: 'b → c → b',
    });
    expect(readPlan('use "me"', 'file:///me', host({ me: '' })).uses[0]?.status).toBe('cycle');
  });
  test('a name twice: the own one wins, and it is told', () => {
    const plan = readPlan(
      'use "a"\npaint p = PB15 in linseed',
      'file:///me',
      host({ a: 'paint p = PB29 in linseed' }),
    );
    expect(plan.visible.paints.get('p')?.namePlace.uri).toBe('file:///me');
    expect(plan.clashes).toMatchObject([{ name: 'p', kind: 'paint', fromUse: true }]);
  });
});

test('references lead from every use to its declaration', () => {
  const text = sample('rich');
  for (const r of rich.names) {
    expect(text.slice(r.place.start, r.place.end), JSON.stringify(r)).toBe(r.name);
    if (r.target?.uri === uri) expect(text.slice(r.target.start, r.target.end)).toBe(r.name);
  }
  const kinds = new Set(rich.names.filter((r) => r.target).map((r) => r.kind));
  expect([...kinds].sort()).toEqual(['area', 'group', 'medium', 'mix', 'paint', 'pigment']);
  expect(record.names.some((r) => r.kind === 'layer' && r.target)).toBe(true);
});

test('places hold what they say', () => {
  const text = sample('rich');
  for (const l of rich.layers) {
    expect(text.slice(l.namePlace.start, l.namePlace.end)).toBe(l.name);
    expect(text.slice(l.kindPlace.start, l.kindPlace.end)).toBe(l.kind);
    expect(text.slice(l.place.start, l.place.end)).toMatch(/^\w+ [\s\S]*\}$/);
    for (const f of l.fields)
      expect(['color', f.name]).toContain(text.slice(f.wordPlace.start, f.wordPlace.end));
    if (l.film)
      expect(text.slice(l.film.place.start, l.film.place.end).replace(/\s+/g, ' ')).toBe(l.film.words);
  }
});

test('names with accents; words that are also units', () => {
  const plan = one(
    'plan "x"\narea côté-clair 50 %\narea m 20 %\narea dry 10 %\narea light 10 %\narea oil 5 %\nglaze é { on côté-clair, dry, light, oil, m   dry 2027-01-02   film 8 µm }',
  );
  expect(plan.problems).toEqual([]);
  expect(plan.layers[0]?.on.every((a) => a.known)).toBe(true);
  expect(plan.layers[0]?.dry?.iso).toBe('2027-01-02');
});
