/** What is proposed instead of a pigment: it draws nothing in its place, it is the nearest there is, and painters know it. */
import { describe, expect, test } from 'vitest';
import { type Analysis, createAnalyser } from '../../language/src/analyse.ts';
import { allPigments, lookupPigment } from '../../language/src/materials/catalogue.ts';
import type { Pigment } from '../../language/src/materials/types.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import type { Finding } from '../../language/src/rules/rule.ts';
import { randomPlan } from '../fuzz/plans.ts';
import { tries } from '../long.ts';
import { applied } from './harness.ts';

const uri = 'file:///instead.paintplan';
const read = (text: string): Analysis => createAnalyser()(text, uri);

/** A pigment as painters use it: body colour under others, let down with lead white and titanium, a glaze over white. */
const uses = (pigment: string): string => `plan "Test"
start 2026-03-02
support oak-panel 40 x 50 cm
studio { room 60 m3  air-changes 4 per hour }
area low 25 %
area tint 25 %
area leaded 25 %
area top 25 %
ground priming { material acrylic }
paint mine = ${pigment} in linseed
layer body { on low  colour mine  film 42 µm  wait 60 weeks }
layer pale { on tint  colour 1 mine + 4 PW6  film 30 µm  wait 60 weeks }
layer old { on leaded  colour 1 mine + 4 PW1  film 30 µm  wait 60 weeks }
layer cover { on low  colour PY43  film 20 µm  prepare wipe with odourless-spirit  wait 60 weeks }
layer white { on top  colour PW6  film 40 µm  wait 60 weeks }
glaze deep { on top  colour mine  medium 50 % linseed  film 7 µm  prepare wipe with odourless-spirit }
`;

interface Judged {
  readonly plan: Analysis['plan'];
  readonly found: readonly Finding[];
}

const judged = (text: string): Judged => {
  const { plan, findings } = read(text);
  return { plan, found: findings() };
};

/** Findings but hints by rule, severity and layer; of a record the grave ones. */
function told({ plan, found }: Judged): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { rule, severity, layer } of found) {
    if (severity === 'hint' || (severity === 'info' && plan.kind === 'record')) continue;
    const key = `${rule} ${severity} ${layer === undefined ? '' : plan.layers[layer]?.name}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

/** Whether a text draws one finding less of the rule than before, and none more of any. */
function drawsNone(before: Judged, after: Judged, rule: string): boolean {
  const own = ({ found }: Judged) => found.filter((f) => f.rule === rule).length;
  const known = told(before);
  return own(after) < own(before) && [...told(after)].every(([key, n]) => n <= (known.get(key) ?? 0));
}

const pigmentOf = (id: string): Pigment => {
  const found = allPigments().find((p) => p.id === id);
  if (!found) throw new Error(`no pigment ${id}`);
  return found;
};

/** Puts every proposal in; returns the rules that made some. */
function putIn(text: string): Set<string> {
  const before = judged(text);
  const proposing = new Set<string>();
  for (const finding of before.found)
    for (const other of finding.instead ?? []) {
      const what = `${other.pigment} for: ${finding.message}\nin\n${text}`;
      if (before.plan.kind === 'plan') expect(pigmentOf(other.pigment).used.to, what).toBeUndefined();
      expect(drawsNone(before, judged(applied(text, other.fix, uri)), finding.rule), what).toBe(true);
      expect(other.deltaE00, what).toBeLessThanOrEqual(20);
      expect(other.radius, what).toBeGreaterThanOrEqual(1);
      proposing.add(finding.rule);
    }
  return proposing;
}

const PATIENT = 120_000;

describe('no proposal draws its rule, nor adds to others', { timeout: PATIENT }, () => {
  test('for the whole catalogue', () => {
    const every = tries(6, 1);
    const some = allPigments().filter((p, i) => i % every === 0 || ['PR83', 'NBr8', 'PW4'].includes(p.id));
    const rules = new Set(some.flatMap(({ id }) => [...putIn(uses(id))]));
    expect([...rules].sort()).toEqual(
      expect.arrayContaining([
        'brown-coal-film',
        'darkens-or-greys',
        'fugitive-pigment',
        'opaque-in-glaze',
        'restricted-material',
        'slow-underlayer',
        'toxic-pigment',
        'zinc-in-film',
      ]),
    );
  });

  test('in random plans', () => {
    const seeds = Array.from({ length: tries(12, 400) }, (_, i) => i + 1);
    expect(seeds.flatMap((seed) => [...putIn(randomPlan(seed))]).length).toBeGreaterThan(0);
  });
});

/** The colour of the layer a finding is about, on the first of its areas, as the study has it. */
function colourOf({ study }: Analysis, layer: string) {
  const found = study.layers.find((l) => l.layer.name === layer)?.colours()[0]?.lab;
  if (!found) throw new Error(`no colour of ${layer}`);
  return found;
}

describe('the nearest are the nearest, the whole catalogue put in one by one', { timeout: PATIENT }, () => {
  test.each([
    ['PR83', 'fugitive-pigment', 'deep'],
    ['PR108', 'opaque-in-glaze', 'deep'],
    ['PBk7', 'slow-underlayer', 'body'],
    ['PB32', 'darkens-or-greys', 'body'],
    ['PW4', 'zinc-in-film', 'body'],
  ])('%s, %s in %s', (id, rule, layer) => {
    const text = uses(id);
    const now = read(text);
    const before = judged(text);
    const finding = before.found.find(
      (f) => f.rule === rule && f.layer !== undefined && now.plan.layers[f.layer]?.name === layer,
    );
    const instead = finding?.instead ?? [];
    const white = (p: Pigment) => p.code?.startsWith('PW') === true;
    // the rules about one layer leave the paint of the others as it is
    const everywhere = rule === 'fugitive-pigment' || rule === 'darkens-or-greys';
    const put = (p: Pigment): string =>
      everywhere
        ? text.replace(`= ${id} in`, `= ${p.id} in`)
        : text.replace(new RegExp(`(${layer} [^\\n]*colour )mine`), `$1${p.id}`);
    const all = allPigments()
      .filter((p) => p.id !== id && p.used.to === undefined && white(p) === white(pigmentOf(id)))
      // against fading only what is classed as lasting, and of which nobody says that it fades, is any help
      .filter(
        (p) =>
          rule !== 'fugitive-pigment' ||
          (/^I{1,2}$/.test(p.lightfastness?.value ?? '') && !/fade/.test(p.incompatibilities?.value ?? '')),
      )
      .flatMap((p) => {
        const then = read(put(p));
        const off = deltaE00(colourOf(now, layer), colourOf(then, layer));
        return off <= 20 && drawsNone(before, { plan: then.plan, found: then.findings() }, rule)
          ? [{ id: p.id, off }]
          : [];
      })
      .sort((a, b) => a.off - b.off);
    expect(instead.length, JSON.stringify(all.slice(0, 5))).toBeGreaterThan(0);
    const rounded = (off: number) => Number(off.toFixed(6));
    expect(instead.map((o) => rounded(o.deltaE00))).toEqual(
      all.slice(0, instead.length).map((o) => rounded(o.off)),
    );
    expect(all.map((o) => o.id)).toEqual(expect.arrayContaining(instead.map((o) => o.pigment)));
  });
});

describe('what painters take instead', () => {
  const laid = (pigment: string, how: string): string =>
    `plan "Test"\nsupport oak-panel 40 x 50 cm\nground priming { material acrylic }\npaint mine = ${pigment} in linseed\n${how}\n`;
  const body = 'layer body { colour mine  film 30 µm }';
  const glaze = 'glaze deep { colour mine  medium 50 % linseed  film 7 µm }';

  test.each([
    // common practice: quinacridones, anthraquinone and perylene reds are sold as lasting crimsons
    [
      'genuine alizarin',
      'PR83',
      'fugitive-pigment',
      glaze,
      /^(PV19|PR177|PR176|PR179|PR264|PR202|PR206|PR122|PR175|PR187)/,
    ],
    // common practice: lead white gives way to titanium white and the whites without zinc
    ['lead white', 'PW1', 'toxic-pigment', body, /^PW(6|7|21|22|5)/],
    // common practice: vermilion gives way to lasting organic scarlets where cadmium is to be avoided too
    ['vermilion', 'PR106', 'toxic-pigment', body, /^(PR(188|242|255|254|149|168|178|112|170|9)|PO(64|73))/],
    // common practice: hues of Naples yellow are made of earths, iron oxides and titanate yellows
    ['Naples yellow', 'PY41', 'restricted-material', body, /^(PY(42|43|53|119|184|65)|PBr24|PW)/],
  ])('%s', (_, pigment, rule, how, known) => {
    const finding = judged(laid(pigment, how)).found.find((f) => f.rule === rule);
    const found = finding?.instead?.map((o) => o.pigment) ?? [];
    expect(found.length).toBeGreaterThan(0);
    expect(
      found.filter((id) => known.test(id)),
      found.join(', '),
    ).not.toEqual([]);
  });
});

describe('where the pigment is named', () => {
  const fixOf = (text: string, rule: string): string => {
    const finding = read(text)
      .findings()
      .find((f) => f.rule === rule);
    const [first] = finding?.instead ?? [];
    if (!first) throw new Error(`nothing instead for ${finding?.message}`);
    return applied(text, first.fix, uri);
  };
  const head = 'plan "x"\nsupport oak-panel 20 x 30 cm\nground g { material acrylic }\n';

  test('a tube is exchanged as a whole, with the oil that was its own', () => {
    const after = fixOf(
      `${head}paint rose = PR83 in walnut 45 % oil\nlayer a { colour rose + PW6 }\n`,
      'fugitive-pigment',
    );
    expect(after).toMatch(/paint rose = P[RVO]\S+( \S+)? in walnut\n/);
  });

  test('one layer takes another tube where others keep it', () => {
    const text = `${head}paint red = PR101 in linseed\nlayer a { colour red film 30 µm }\nglaze b { colour red medium 50 % linseed prepare wipe with odourless-spirit }\n`;
    const after = fixOf(text, 'opaque-in-glaze');
    expect(after).toContain('paint red = PR101 in linseed');
    expect(after).toMatch(/glaze b { colour (?!red)/);
  });

  test('what was painted is named and not exchanged', () => {
    const text =
      'record "x"\nmade 1500..1520\nsupport oak-panel 20 x 30 cm\nground g { material chalk-glue }\nlayer sky { colour 1 PB29 + 2 PW1 }\n';
    const finding = read(text)
      .findings()
      .find((f) => f.rule === 'not-in-period');
    expect(finding?.instead?.length).toBeGreaterThan(0);
    for (const { pigment } of finding?.instead ?? [])
      expect(pigmentOf(pigment).used.from ?? Number.NEGATIVE_INFINITY).toBeLessThanOrEqual(1500);
    expect(finding?.fixes).toEqual([]);
  });

  test('nothing is proposed where no colour can be predicted', () => {
    const text =
      'record "x"\nmade 1500..1520\nsupport unknown\npaint odd = unknown\nlayer a { colour unknown }\nlayer b { colour odd + PB29 }\n';
    for (const f of read(text).findings()) expect(f.instead ?? []).toEqual([]);
  });

  test('every code of the catalogue means itself where it is put in', () => {
    for (const { id } of allPigments()) {
      const [code = '', variety] = id.split(' ');
      if (/^[PN]/.test(code))
        expect(lookupPigment(code, variety)).toMatchObject({ kind: 'found', pigment: { id } });
    }
  });
});
