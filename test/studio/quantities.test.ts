/** Amounts: published spreading figures first, then that nothing is lost or made up on the way. */
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import type { Interval } from '../../language/src/materials/interval.ts';
import { materialsCsv } from '../../language/src/studio/quantities.ts';
import { PREPARATION, WASTE } from '../../language/src/studio/settings.ts';
import { studied } from '../plan/text.ts';

const SQUARE_FOOT_CM2 = 929.0304;
const US_GALLON_ML = 3785.411784;

/** ml of one coat of tube paint on so many cm², laid so many µm wet, without waste: oil paint dries as thick as it is laid. */
function net(cm2: number, wet: number): number {
  const side = Math.sqrt(cm2);
  const { quantities } = studied(
    `plan "x"\nsupport linen ${side} x ${side} cm\npaint w = PW6 in linseed\nlayer a { colour w   film ${wet} µm }`,
  );
  return quantities!.paints[0]!.ml.likely / (1 + WASTE);
}

describe('published spreading figures', () => {
  test('[SPREAD-900] 45.3 µm wet take a US gallon over 900 square feet (Gardner 1911)', () => {
    expect(net(900 * SQUARE_FOOT_CM2, 45.3) / US_GALLON_ML).toBeCloseTo(1, 2);
    expect(1000 / net(1e4, 45.3)).toBeCloseTo(22.09, 1);
  });
  test('[GRAMS-900] 36 g for a plate of 6 square feet at 5400 g a gallon (Gardner 1911: 900:6::5400:x)', () => {
    const wet = (US_GALLON_ML / (900 * SQUARE_FOOT_CM2)) * 1e4;
    expect(net(6 * SQUARE_FOOT_CM2, wet) * (5400 / US_GALLON_ML)).toBeCloseTo(36, 6);
  });
  test('[SPREAD-65-125] 65 % solids at 125 µm dry: 5.2 m² a litre (published coverage sheet)', () => {
    expect(1000 / net(1e4, 125 / 0.65)).toBeCloseTo(5.2, 2);
  });
  test('[WFT-62] [WFT-10] 161 µm wet and 100 µm wet take 161 and 100 ml a m² (published notes on wet films)', () => {
    expect(Math.abs(net(1e4, 100 / 0.62) - 161)).toBeLessThan(1);
    expect(net(1e4, 100)).toBeCloseTo(100, 9);
  });
});

const PAINTING = `plan "Made up"
support linen 50 x 40 cm
area left 30 %
area right 70 %
paint white = PW6 in linseed
paint umber = PBr7 burnt-umber in linseed
medium thin = 50 % turpentine + 50 % linseed
medium rich = 50 % thin + 50 % alkyd
mix half = 1 white + 1 umber
mix quarter = 1 half + 1 white
`;

const sum = (xs: readonly Interval[], end: keyof Interval) => xs.reduce((s, x) => s + x[end], 0);

describe('a plan as text', () => {
  test('mixes are told as their paints, mediums as their oils and spirits, nested ones too', () => {
    const { quantities: q } = studied(
      `${PAINTING}layer body { colour quarter medium 40 % rich film 20 µm coats 3 }`,
    );
    const [white, umber] = ['white', 'umber'].map((n) => q!.paints.find((p) => p.name === n)!);
    expect(white!.ml.likely / umber!.ml.likely).toBeCloseTo(3, 9);
    const rich = q!.mediums[0]!;
    expect(rich.ml.likely / (white!.ml.likely + umber!.ml.likely)).toBeCloseTo(0.4 / 0.6, 9);
    const parts = Object.fromEntries(rich.ingredients.map((i) => [i.name, i.ml.likely / rich.ml.likely]));
    expect(parts).toEqual({
      turpentine: expect.closeTo(0.25, 9),
      linseed: expect.closeTo(0.25, 9),
      alkyd: expect.closeTo(0.5, 9),
    });
    expect(rich.ingredients[0]!.g.likely).toBeCloseTo(0.86 * rich.ingredients[0]!.ml.likely, 9); // NIOSH density
  });

  test('what is mixed is what is laid: areas, coats, waste, on every end of the range', () => {
    const s = studied(`${PAINTING}
layer one { on left colour half film 15..25 µm }
glaze two { on right colour umber medium 50 % rich film 6 µm coats 4 }
`);
    const q = s.quantities!;
    for (const end of ['low', 'likely', 'high'] as const) {
      const laid = s.layers.reduce(
        (ml, l) =>
          ml + 0.2 * (l.layer.name === 'one' ? 0.3 : 0.7) * 1.25 * l.coats * l.composition!.wetFilm[end],
        0,
      );
      expect(sum([...q.paints.map((p) => p.ml), ...q.mediums.map((m) => m.ml)], end)).toBeCloseTo(laid, 9);
      const sittings = q.sessions.flatMap((x) => [
        ...x.paints.map((p) => p.ml),
        ...(x.medium ? [x.medium.ml] : []),
      ]);
      expect(sum(sittings, end)).toBeCloseTo(laid, 9);
    }
    expect(q.sessions.map((x) => `${x.layer} ${x.coat}`)).toEqual([
      'one 1',
      'two 1',
      'two 2',
      'two 3',
      'two 4',
    ]);
  });

  test('a paint weighs what its recipe says: lead white near 2.4 g/ml as printed tube weights have it', () => {
    // Gardner 1911 prints 2.45 for Dutch process white lead of 6.83 in thin oil paint; a stiff tube is denser.
    const { quantities: q } = studied(
      'plan "x"\nsupport oak-panel 10 x 10 cm\npaint lead = PW1 in linseed\nlayer a { colour lead film 20 µm }',
    );
    const { g, ml } = q!.paints[0]!;
    expect(g.likely / ml.likely).toBeGreaterThan(2.45);
    expect(g.likely / ml.likely).toBeLessThan(6.7);
  });

  test('preparations are counted by surface and coat, a wiped-out area like the rest', () => {
    const text = `${PAINTING}glaze a { on right prepare wipe with turpentine prepare oil-out with rich colour umber film 8 µm coats 2`;
    const [plain, wiped] = [`${text} }`, `${text} wipe-out right }`].map((t) => studied(t).quantities!);
    const wipe = plain!.agents.find((a) => a.method === 'wipe')!;
    expect(wipe.name).toBe('turpentine');
    expect(wipe.ml!.likely).toBeCloseTo(2 * 0.14 * PREPARATION.wipe.likely, 9);
    expect(plain!.agents.find((a) => a.method === 'oil-out')!.name).toBe('rich');
    expect(wiped!.paints).toEqual(plain!.paints);
    expect(wiped!.assumptions.map((a) => a.field)).toContain('wipe-out');
  });

  test('a pad or a sheet is bought by the piece, pumice and liquids by volume', () => {
    const { agents } = studied(
      `${PAINTING}glaze a { prepare abrade with abrasive-pad colour umber film 8 µm }
glaze b { prepare abrade with sandpaper colour umber film 8 µm }
glaze c { prepare abrade with pumice colour umber film 8 µm }`,
    ).quantities!;
    const ml = Object.fromEntries(agents.map((a) => [a.name, a.ml !== undefined]));
    expect(ml).toMatchObject({ 'abrasive-pad': false, sandpaper: false, pumice: true });
  });

  test('a wax varnish is dissolved in white spirit, a natural resin in turpentine (common practice)', () => {
    const spirits = (resin: string) =>
      studied(`${PAINTING}varnish v { resin ${resin} film 20 µm }`).quantities!.agents.map((a) => a.name);
    expect(spirits('microcrystalline-wax')).toContain('white-spirit');
    expect(spirits('beeswax')).toContain('white-spirit');
    expect(spirits('damar')).toContain('turpentine');
  });

  test('areas that add up to more than the whole take no more paint than the whole', () => {
    const of = (share: number) =>
      studied(
        `plan "x"\nsupport linen 50 x 40 cm\npaint w = PW6 in linseed\narea a ${share} %\narea b ${share} %\nlayer l { on a, b colour w film 20 µm }`,
      ).quantities!.paints[0]!.ml.likely;
    expect(of(150)).toBeCloseTo(of(50), 9);
  });

  test('grounds and varnishes are told too; resin and spirit add up to the varnish', () => {
    const q = studied(
      `${PAINTING}ground g { material acrylic film 80 µm }\nvarnish v { resin damar film 20 µm }`,
    ).quantities!;
    const agents = Object.fromEntries(q.agents.map((a) => [`${a.method} ${a.name}`, a.ml!.likely]));
    expect(agents['ground acrylic']).toBeCloseTo((0.2 * 1.25 * 80) / 0.4, 9);
    expect(agents['varnish damar']).toBeCloseTo(0.2 * 1.25 * 20, 9);
    expect(agents['varnish damar']! / (agents['varnish damar']! + agents['varnish turpentine']!)).toBeCloseTo(
      0.25,
      9,
    );
  });

  test('no size, no amounts; a record asks for none', () => {
    expect(studied('plan "x"\npaint w = PW6 in linseed\nlayer a { colour w }').quantities).toBeUndefined();
    expect(
      studied('record "x"\nsupport linen 50 x 40 cm\nlayer a { colour PW6 }').quantities,
    ).toBeUndefined();
  });

  test('ten thousand coats are all in the amounts, and the list of sittings stays one', () => {
    const q = studied(`${PAINTING}layer a { colour white film 20 µm coats 10000 }`).quantities!;
    const once = studied(`${PAINTING}layer a { colour white film 20 µm }`).quantities!;
    expect(q.paints[0]!.ml.likely / once.paints[0]!.ml.likely).toBeCloseTo(10_000, 6);
    expect(q.sessions.length).toBeLessThanOrEqual(100);
    expect(q.assumptions.map((a) => a.field)).toContain('coats');
  });

  test('mixes and mediums that contain themselves give no amounts and no loop', () => {
    const circle =
      'plan "x"\nsupport linen 5 x 5 cm\npaint w = PW6 in linseed\nmix one = 1 two + 1 w\nmix two = 1 one\nmedium thin = 1 thick\nmedium thick = 1 thin\n';
    expect(studied(`${circle}layer a { colour one medium 10 % thin film 20 µm }`).quantities!.paints).toEqual(
      [],
    );
  });
});

describe('the materials list', () => {
  const rows = (text: string): Record<string, string>[] => parse(text, { columns: true });

  test('comes back from a general-purpose parser with every row and figure', () => {
    const s = studied(
      `${PAINTING}layer a { prepare wipe with turpentine colour quarter medium 40 % rich film 20 µm }`,
    );
    const table = rows(materialsCsv(s));
    const by = (kind: string) => table.filter((r) => r.kind === kind).map((r) => r.name);
    expect(by('paint')).toEqual(['white', 'umber']);
    expect(by('medium')).toEqual(['rich']);
    expect(by('ingredient')).toEqual(['turpentine', 'linseed', 'alkyd']);
    expect(by('agent')).toEqual(['turpentine', 'turpentine']);
    expect(Number(table[0]!.ml_likely)).toBeCloseTo(s.quantities!.paints[0]!.ml.likely, 2);
    for (const r of table) expect(Number(r.ml_low)).toBeLessThanOrEqual(Number(r.ml_high));
  });

  test('liquids add up what goes into mediums, preparations and brushes', () => {
    const s = studied(
      `${PAINTING}layer a { prepare wipe with turpentine colour white medium 40 % thin film 20 µm }`,
    );
    const table = rows(materialsCsv(s));
    const ml = (kind: string) =>
      table
        .filter((r) => r.kind === kind && r.name === 'turpentine')
        .reduce((t, r) => t + Number(r.ml_likely), 0);
    expect(ml('liquid')).toBeCloseTo(ml('ingredient') + ml('agent'), 0);
  });

  test('a plan without amounts gives the head alone', () => {
    expect(materialsCsv(studied('plan "x"\nlayer a { colour PW6 }'))).toMatch(/^kind,[^\r]*\r\n$/);
  });
});
