/** What is remembered between two readings never shows: an analyser kept through any edits says what a fresh one says. */
import { expect, test } from 'vitest';
import { type Analysis, createAnalyser } from '../../language/src/analyse.ts';
import type { PlanHost } from '../../language/src/plan/host.ts';
import { declarationWords, fieldsOf, LAYER_WORDS, WORDED } from '../../language/src/syntax/words.ts';
import { long } from '../long.ts';
import { filled, PALETTE, PLAN, RECORD, random, type Template, template } from './edits.ts';

const URI = 'file:///work.paintplan';
const lone: PlanHost = { resolve: () => ({ outside: true }), read: () => ({ failed: 'missing' }) };

/** Everything a person may see of a reading. */
const all = ({ plan, study, findings }: Analysis) => ({
  // every place is in it
  plan,
  layers: study.layers.map((l) => ({ ...l, layer: l.layer.name, below: [...l.below], colours: l.colours() })),
  areas: study.areas.map((a) => ({ ...a, buildUp: a.buildUp(), target: a.target() })),
  assumptions: study.assumptions,
  calendar: study.calendar,
  quantities: study.quantities,
  air: study.air,
  permanence: study.permanence,
  cautions: study.cautions,
  calibrations: plan.pigments.map((p) => study.calibration(p)),
  sources: study.sources,
  findings: findings({ strict: true }),
});

/** Reads the texts one after the other; the last must read as if it had been the first. */
function keepsUp(texts: readonly string[]): void {
  const kept = createAnalyser();
  const last = texts.map((text) => all(kept(text, URI, lone))).at(-1);
  expect(last).toEqual(all(createAnalyser()(texts.at(-1) as string, URI, lone)));
}

const plan = (declarations: string) =>
  `plan "Trial"\nstart 2027-01-04\nsupport linen 40 x 30 cm\n${declarations}`;

test('an edit of the white of a tint', () => {
  const text = (white: string) =>
    plan(
      `pigment mine like PR101 { tint 1:4 white #c59a8c }\npaint white = ${white} in linseed\nlayer a { colour mine   film 30 µm }`,
    );
  keepsUp([text('PW6'), text('3 PW18 + 1 PW6')]);
  const lab = (white: string) => createAnalyser()(text(white), URI, lone).study.layers[0]!.colours()[0]!.lab;
  expect(lab('PW6')).not.toEqual(lab('3 PW18 + 1 PW6'));
});

test.each([
  ['colour unknown', 'colour nowhere'],
  ['colour nowhere', 'colour unknown'],
  ['colour dark', 'colour nowhere'],
  ['colour nowhere', 'colour dark'],
  ['colour dark', 'colour unknown'],
])('a record with a layer of %s and a layer of %s', (below, above) => {
  const { study } = createAnalyser()(
    `record "Panel"\npaint dark = unknown\nlayer a { ${below}   film 20 µm }\nlayer b { ${above}   film 20 µm }`,
    URI,
    lone,
  );
  const alone = (colour: string) =>
    createAnalyser()(`record "Panel"\npaint dark = unknown\nlayer a { ${colour}   film 20 µm }`, URI, lone)
      .study.layers[0]!.assumptions;
  expect(study.layers.map((l) => l.assumptions)).toEqual([alone(below), alone(above)]);
});

test('a mix of codes is ground in what its layer is painted in', () => {
  const binders = (layers: string) =>
    createAnalyser()(plan(`mix dun = PB29 + PBr7 burnt-sienna\n${layers}`), URI, lone).study.layers.map((l) =>
      l.composition?.binders.map((b) => b.binder),
    );
  const egg = 'underlayer a { material egg   colour dun   film 15 µm }';
  const oil = 'layer b { colour dun   film 15 µm }';
  expect(binders(`${egg}\n${oil}`)).toEqual([['egg-tempera'], ['linseed']]);
  expect(binders(`${oil}\n${egg}`)).toEqual([['linseed'], ['egg-tempera']]);
  expect(binders('underlayer a { material egg   colour PB29   film 15 µm }')).toEqual([['egg-tempera']]);
});

test.each([
  [
    'quoting a bare note',
    'glaze a { note }\npaint b = PB29 in linseed',
    'glaze a { note "" }\npaint b = PB29 in linseed',
  ],
  ['quoting a note of many words', 'note a paint stood here', 'note "a" paint stood here'],
  [
    'a note in a block of one line, quoted',
    'glaze a { note mind the paint } paint b = PB29 in linseed',
    'glaze a { note "mind the paint" } paint b = PB29 in linseed',
  ],
])('%s', (_, before, after) => {
  keepsUp([plan(before), plan(after)]);
  keepsUp([plan(after), plan(before)]);
});

test.each([
  'glaze a { note mind the paint } paint b = PB29 in linseed\nglaze c { colour b }',
  'glaze a { evidence S1 paint } paint b = PB29 in linseed\nglaze c { colour b }',
  'glaze a { allow oily-rags because no paint } paint b = PB29 in linseed\nglaze c { colour b }',
])('words without quotes end with the braces they stand in: %s', (text) => {
  const { plan: read } = createAnalyser()(plan(text), URI, lone);
  expect(read.paints.map((p) => p.name)).toEqual(['b']);
  expect(read.problems.map((p) => p.message).join(' ')).not.toContain('begins no declaration');
});

test('a layer that is the same dries otherwise once another like it was seen dry', () => {
  const text = (dry: string) =>
    plan(
      `paint ochre = PY43 in linseed\nlayer a { colour ochre   film 20 µm   painted 2027-01-05 ${dry} }\nlayer b { colour ochre   film 20 µm   wait 60 days }\nlayer c { colour ochre   film 20 µm }`,
    );
  keepsUp([text(''), text('dry 2027-04-05')]);
  keepsUp([text('dry 2027-04-05'), text('')]);
  const rules = (dry: string) => {
    const { findings } = createAnalyser()(text(dry), URI, lone);
    return findings().map((f) => f.rule);
  };
  expect(rules('')).not.toContain('not-ready');
  expect(rules('dry 2027-04-05')).toContain('not-ready');
});

test('a name too many to be guessed at is guessed at once a slip above it is mended', () => {
  const text = (first: string) =>
    plan(
      `paint blue = PB29 in linseed\n${Array.from({ length: 201 }, (_, i) => `glaze g${i} { colour ${i === 0 ? first : 'bleu'} }\n`).join('')}`,
    );
  const [slip, mended] = ['bleu', 'blue'].map(text) as [string, string];
  const read = (of: string) => createAnalyser()(of, URI, lone).plan.names.findLast((n) => n.name === 'bleu');
  expect([read(slip)?.near ?? [], read(mended)?.near]).toEqual([[], ['blue']]);
  const kept = createAnalyser();
  kept(slip, URI, lone);
  expect(kept(mended, URI, lone).plan).toEqual(createAnalyser()(mended, URI, lone).plan);
});

/** Every word of the language that an edit of these texts reaches. */
const reached = new Set<string>();
const words = [...declarationWords.map((d) => d.word), ...WORDED.flatMap(fieldsOf).map((f) => f.word)].filter(
  (w) => w !== 'use',
);

/** The words of its line before a slot, those in it, and the block it lies in: what an edit there reaches. */
function reach({ fixed, slots }: Template, slot: number): void {
  const before = fixed.slice(0, slot + 1).join('');
  const block = /(?:^|\n)([a-z-]+)[^\n{}]*\{[^{}]*$/.exec(before)?.[1];
  const line = before.slice(before.lastIndexOf('\n') + 1);
  for (const word of [block ?? '', line, ...slots[slot]!].join(' ').split(/[^a-z-]+/)) reached.add(word);
}

function walk(seed: number, texts: readonly [string, string], steps: number): void {
  const next = random(seed);
  const pick = (n: number) => Math.floor(next() * n);
  const [work, palette] = texts.map(template) as [Template, Template];
  const chosen = [work, palette].map((t) => t.slots.map(() => 0));
  const host = (): PlanHost => {
    const read = filled(palette, chosen[1]!);
    return { resolve: () => ({ uri: 'file:///palette.paintplan' }), read: () => ({ text: read }) };
  };
  const kept = createAnalyser();
  const history: string[] = [];
  for (let step = 0; step < steps; step++) {
    const which = pick(20) === 0 ? 1 : 0;
    const t = which === 1 ? palette : work;
    const slot = pick(t.slots.length);
    chosen[which]![slot] = pick(t.slots[slot]!.length);
    reach(t, slot);
    let text = filled(work, chosen[0]!);
    // now and then a line is lost, doubled, moved or cut off, as while it is being typed
    if (pick(3) === 0) {
      const lines = text.split('\n');
      const line = pick(lines.length);
      const [own = ''] = lines.splice(line, 1);
      const how = pick(4);
      if (how === 1) lines.splice(line, 0, own, own);
      if (how === 2) lines.splice(pick(lines.length), 0, own);
      if (how === 3) lines.splice(line, 0, own.slice(0, pick(own.length + 1)));
      text = lines.join('\n');
    }
    history.push(text);
    const [now, anew] = [kept, createAnalyser()].map((a) => all(a(text, URI, host())));
    expect(now, `seed ${seed}, step ${step}`).toEqual(anew);
  }
}

test('a kept analyser and a fresh one say the same of every text, whatever was edited before', () => {
  const [walks, steps] = long ? [40, 100] : [4, 30];
  for (let seed = 1; seed <= walks; seed++) walk(seed, [seed % 4 === 0 ? RECORD : PLAN, PALETTE], steps);
  if (long) expect(words.filter((w) => !reached.has(w))).toEqual([]);
}, 600_000);

/** Lines of a plan of many layers, in the ways each may read; half of them have something to be said of them. */
const DECLARED = [
  ['support linen 40 x 50 cm', 'support oak-panel 40 x 50 cm', 'support linnen 40 x 50 cm'],
  ['area sky 50 %', 'area sky 5 %', 'area sky 70 %'],
  ['area land 40 %', 'area land 40 %\narea sea 20 %'],
  ['paint white = PW6 in linseed', 'paint white = PW4 in linseed', 'paint wite = PW6 in linseed'],
  ['paint blue = PB29 in linseed', 'paint blue = PB29 in linseed 20 % oil', 'paint blue = PB29 in poppy'],
  ['medium rich = 20 % turpentine + 80 % stand-oil', 'medium rich = 60 % turpentine + 40 % linseed'],
  ['mix pale = 3 white + 1 blue', 'mix pale = 3 white + 1 pale', 'mix pale = 30 % white + 50 % blue'],
];
const LAYERS = [
  ['ground priming { material acrylic }', 'ground priming { material chalk-glue   wait 1 day }'],
  ['layer NAME { on sky   colour pale   film 30 µm }', 'layer NAME { on sky   colour pale   film 300 µm }'],
  ['layer NAME { colour white   film 900 µm   film 9 µm }', 'layer NAME { colour whit   film 9 µm }'],
  [
    'glaze NAME { colour 2 blue + 1 white   medium 70 % rich   film 8 µm }',
    'glaze NAME { colour blue   film 8 µm }',
  ],
  [
    'glaze NAME { on land   medium 30 % rich   film 12 µm }',
    'glaze NAME { on lnd   medium rich   film 12 µm }',
  ],
  ['glaze NAME {\n  prepare oil-out with walnut\n  colour blue\n}', 'glaze NAME {\n  prepare abrade\n}'],
  ['scumble NAME { colour white   allow opaque-in-glaze because x }', 'scumble NAME { colour unknown }'],
  [
    'layer NAME { colour pale   painted 2027-02-10   dry 2027-02-14 }',
    'layer NAME { colour pale   painted 2027-02-01 }',
  ],
  ['varnish NAME { resin damar   after 2 weeks }', 'varnish NAME { }'],
  [
    '/// what it is for\nglaze NAME { colour PB29   coats 9 }',
    '// a remark\nglaze NAME { colour PBr7   coats 2.5 }',
  ],
];

test('what is found stands where it belongs, whatever is written above or below it', () => {
  const found = new Set<string>();
  for (let seed = 1; seed <= (long ? 60 : 3); seed++) {
    const next = random(seed * 977);
    const one = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
    const declared = DECLARED.map((d) => d[0]!);
    let named = 0;
    const layer = () => one(one(LAYERS)).replace('NAME', next() < 0.1 ? 'same' : `l${named++}`);
    const layers = ['ground priming { material acrylic }', ...Array.from({ length: 25 }, layer)];
    const kept = createAnalyser();
    for (let step = 0; step < 40; step++) {
      const at = Math.floor(next() * layers.length);
      const how = Math.floor(next() * 8);
      if (how === 0) layers.splice(at, 0, layer());
      else if (how === 1) layers.splice(at, 1);
      else if (how === 2) layers[at] = layers[at]!.replace(/\d+/, (n) => (n === '7' ? '12' : '7'));
      else if (how === 3) layers[at] = `${one(['// above\n', '\n', '  ', '/* x */ '])}${layers[at]}`;
      else if (how === 4) layers.push(...layers.splice(at, 2));
      else if (how === 5) layers[at] = layer();
      else if (how === 6) layers[at] = layers[at]!.slice(0, -1 - Math.floor(next() * 9));
      else declared[Math.floor(next() * declared.length)] = one(one(DECLARED));
      if (layers.length === 0) layers.push(layer());
      const text = `plan "Trial"\nstart 2027-01-04\n${[...declared, ...layers].join('\n')}\n`;
      const [now, anew] = [kept, createAnalyser()].map((analyse) => {
        const { plan: read, findings } = analyse(text, URI, lone);
        const said = findings({ colour: false, strict: true });
        return {
          read,
          said: said.map(({ rule, severity, message, place, related, layer: of }) => ({
            rule,
            severity,
            message,
            place,
            related,
            of,
          })),
        };
      });
      expect(now, `seed ${seed}, step ${step}`).toEqual(anew);
      for (const { rule } of anew!.said) found.add(rule);
    }
  }
  expect(found.size).toBeGreaterThan(25);
}, 600_000);

test('edits reach every declaration and every field of the language', () => {
  for (const text of [PLAN, RECORD]) {
    const t = template(text);
    t.slots.forEach((_, slot) => {
      reach(t, slot);
    });
  }
  expect(words.filter((w) => !reached.has(w))).toEqual([]);
  expect([...LAYER_WORDS].filter((w) => !reached.has(w))).toEqual([]);
});
