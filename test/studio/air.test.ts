/** The air of a plan's worst sitting, from its text. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solvent } from '../../language/src/materials/catalogue.ts';
import type { Interval } from '../../language/src/materials/interval.ts';
import { countedLimit, dayLimits, quarterLimits } from '../../language/src/studio/air-limits.ts';
import { BRUSHES, MIXING } from '../../language/src/studio/settings.ts';
import { concentration, saturationPpm } from '../../language/src/studio/vapour.ts';
import { studied } from '../plan/text.ts';

const plan = (
  studio: string,
  layers: string,
  mediums = 'medium thin = 50 % turpentine + 50 % linseed',
) => `plan "Made up"
studio { ${studio} }
support linen 50 x 40 cm
paint white = PW6 in linseed
${mediums}
${layers}`;
const GLAZE = 'glaze g { colour white medium 50 % thin film 10 µm }';

const ordered = (x: Interval) => x.low <= x.likely && x.likely <= x.high;
const finite = (x: unknown): boolean =>
  typeof x === 'number'
    ? Number.isFinite(x)
    : typeof x !== 'object' || x === null || Object.values(x).every(finite);

describe('sources', () => {
  test('paint: the spirit in the wet film, waste included; brushes: the assumed jar', () => {
    const s = studied(plan('room 30 m³ air-changes 2 per hour session 4 hours', GLAZE));
    const [paint, brushes] = s.air!.parts!;
    const wet = 0.2 * 1.25 * s.layers[0]!.composition!.wetFilm.likely;
    const share = s.layers[0]!.composition!.volatiles[0]!.volumeFraction.likely;
    expect(paint!.grams.likely).toBeCloseTo(wet * share * 0.86, 6); // g/ml: NIOSH Pocket Guide
    expect(brushes!.grams.likely).toBeCloseTo(BRUSHES.likely * 0.86, 9);
    expect(s.air!.solvents[0]!.grams.likely).toBeCloseTo(paint!.grams.likely + brushes!.grams.likely, 9);
  });

  test('the concentration is that of the box at the end of the session, mixing included', () => {
    const { air } = studied(plan('room 30 m³ air-changes 2 per hour session 4 hours', GLAZE));
    const { grams, mgPerM3, ppm } = air!.solvents[0]!;
    const at = (g: number, k: number) => concentration(g * 1000, 4, { volume: 30, airChanges: 2 }, k)!;
    expect(mgPerM3!.low).toBeCloseTo(at(grams.low, MIXING.low), 9);
    expect(mgPerM3!.likely).toBeCloseTo(at(grams.likely, MIXING.likely), 9);
    expect(mgPerM3!.high).toBeCloseTo(at(grams.high, MIXING.high), 9);
    expect(mgPerM3!.likely / ppm!.likely).toBeCloseTo(5.56, 2); // NIOSH factor of turpentine
    expect(air!.mixtureRatio!.likely).toBeCloseTo(ppm!.likely / 20, 9); // ACGIH, in Haz-Map
  });

  test('wiping and an alkyd’s own spirit count; oiling out with plain oil does not', () => {
    const parts = (layer: string, mediums?: string) =>
      studied(plan('room 30 m³', layer, mediums)).air?.parts?.map((p) => `${p.from} ${p.solvent}`);
    // a thinner that no layer uses is not in the brush jar
    expect(parts('glaze g { prepare wipe with isopropanol colour white film 10 µm }')).toEqual([
      'preparation isopropanol',
    ]);
    expect(
      parts('glaze g { prepare wipe with isopropanol colour white medium 10 % turpentine film 10 µm }'),
    ).toEqual(['paint turpentine', 'preparation isopropanol', 'brushes turpentine']);
    expect(parts('glaze g { prepare wipe with surgical-spirit colour white film 10 µm }', '')).toEqual([
      'preparation methylated-spirit',
    ]);
    expect(parts('glaze g { colour white medium 50 % alkyd film 10 µm }', '')).toEqual([
      'paint white-spirit',
    ]);
    expect(parts('glaze g { prepare oil-out with walnut colour white film 10 µm }', '')).toBeUndefined();
    expect(parts('varnish v { resin damar film 20 µm }', '')).toEqual(['paint turpentine']);
    expect(parts('glaze g { prepare wash with water colour white film 10 µm }', '')).toBeUndefined();
  });

  test('brushes from acrylic are washed in water', () => {
    const acrylic = plan('room 30 m³', 'layer a { colour flat film 30 µm }').replace(
      'paint white',
      'paint flat = PW6 in acrylic\npaint white',
    );
    expect(studied(acrylic).layers[0]!.composition).toBeDefined();
    expect(studied(acrylic).air).toBeUndefined();
  });

  test('the worst sitting is reported, by its share of the limits', () => {
    const { air } = studied(
      plan(
        'room 30 m³',
        `${GLAZE}\nglaze h { prepare wipe with turpentine colour white medium 50 % thin film 10 µm }`,
      ),
    );
    expect(air!.layer).toBe('h');
  });

  test('records and palettes are told nothing', () => {
    expect(studied(plan('', GLAZE).replace('plan', 'record')).air).toBeUndefined();
  });
});

describe('limits', () => {
  test.each([
    // the strictest of a working day, and who is next (NIOSH Pocket Guide, OSHA sheets; the rest as the table quotes it)
    ['turpentine', { whose: 'ACGIH', ppm: 20 }, { whose: 'NIOSH', ppm: 100, mgPerM3: 560 }],
    ['white-spirit', { whose: 'SCOEL (EU)', mgPerM3: 116 }, { whose: 'NIOSH', mgPerM3: 350 }],
    ['odourless-spirit', { whose: 'SCOEL (EU)', mgPerM3: 116 }, { whose: 'NIOSH', mgPerM3: 350 }],
    ['citrus-solvent', { whose: 'TRGS 900 (Germany)', ppm: 5 }, { whose: 'WEEL', ppm: 30 }],
    ['ethanol', { whose: 'TRGS 900 (Germany)', ppm: 200 }, { whose: 'NIOSH', ppm: 1000 }],
    ['isopropanol', { whose: 'ACGIH', ppm: 200 }, { whose: 'TRGS 900 (Germany)', ppm: 200 }],
    ['methanol', { whose: 'NIOSH', ppm: 200 }, { whose: 'OSHA', ppm: 200 }],
    ['ammonia', { whose: 'NIOSH', ppm: 25 }, { whose: 'OSHA', ppm: 50 }],
  ])('of %s the strictest counts, the others are kept', (id, first, second) => {
    const s = solvent(id)!;
    expect(dayLimits(s).slice(0, 2)).toMatchObject([first, second]);
    expect(countedLimit(s)).toMatchObject({ limit: first, standIn: false });
    for (const [i, l] of dayLimits(s).entries())
      expect(l.mg).toBeGreaterThanOrEqual(dayLimits(s)[i - 1]?.mg ?? 0);
  });

  test('ACGIH’s 100 ppm of white spirit and the quarter hours of SCOEL and NIOSH stand beside', () => {
    const spirit = solvent('white-spirit')!;
    expect(dayLimits(spirit)).toContainEqual(
      expect.objectContaining({ whose: 'ACGIH', ppm: 100, mgPerM3: 525 }),
    );
    expect(quarterLimits(spirit).map((l) => [l.whose, l.mg])).toEqual([
      ['SCOEL (EU)', 290],
      ['NIOSH', 1800],
    ]);
  });

  test('a mixture is held by the strictest of each', () => {
    const { air } = studied(
      plan('room 30 m³', GLAZE, 'medium thin = 25 % turpentine + 25 % citrus-solvent + 50 % linseed'),
    );
    const [a, b] = air!.solvents;
    expect(air!.mixtureRatio!.likely).toBeCloseTo(
      a!.ppm!.likely / 20 + b!.mgPerM3!.likely / 28, // ACGIH; TRGS 900
      9,
    );
  });

  test('a solvent without any is held against turpentine, and that is said', () => {
    const { air } = studied(plan('room 30 m³', GLAZE, 'medium thin = 50 % spike-oil + 50 % linseed'));
    expect(air!.solvents[0]).toMatchObject({ name: 'spike-oil', limit: undefined });
    expect(air!.assumptions.find((a) => a.field === 'spike-oil')!.why).toMatch(/turpentine/);
    expect(air!.mixtureRatio!.likely).toBeGreaterThan(0);
  });

  test('no more vapour than the air can take up', () => {
    const { air } = studied(plan('room 0.01 m³ air-changes 0 per hour', GLAZE));
    const most = saturationPpm(0.53); // kPa at 20 °C, NIOSH (4 mmHg)
    expect(air!.solvents[0]!.ppm!.high).toBeCloseTo(most, 6);
  });
});

describe('rooms', () => {
  test('no room: the fresh air that keeps the limit in any room', () => {
    const { air } = studied(plan('session 4 hours', GLAZE));
    expect(air!.roomKnown).toBe(false);
    expect(air!.mixtureRatio).toBeUndefined();
    const g = air!.solvents[0]!.grams;
    const mg = (20 * 136) / 24.45; // ACGIH’s 20 ppm; g/mol of NIOSH; l/mol at 25 °C
    expect(air!.neededFreshAir!.low).toBeCloseTo((g.low * 1000) / mg / 4, 9);
    expect(air!.neededFreshAir!.high).toBeCloseTo((3 * g.high * 1000) / mg / 4, 9);
  });

  test('a room of nothing and a session of nothing are findings, not figures', () => {
    const { air } = studied(plan('room 0 m³ session 0 hours', GLAZE));
    expect(air!.roomKnown).toBe(false);
    expect(air!.assumptions.map((a) => a.field)).toEqual(expect.arrayContaining(['room', 'session']));
    expect(finite(air)).toBe(true);
  });

  test('shut windows are assumed where airing is not told', () => {
    const { air } = studied(plan('room 20 m³', GLAZE));
    expect(air!.assumptions.find((a) => a.field === 'air-changes')!.source!.mark).toBe('memory');
  });

  test('without a size of the support the brush jar still counts', () => {
    const { air } = studied(plan('room 20 m³', GLAZE).replace('support linen 50 x 40 cm', ''));
    expect(air!.parts!.map((p) => p.from)).toEqual(['brushes']);
    expect(air!.assumptions.map((a) => a.field)).toContain('support');
  });

  test('any studio whatever: ordered, finite figures; more air is never worse', () => {
    const some = fc.oneof(
      fc.constant(0),
      fc.double({ min: 0, max: 1e6, noNaN: true }),
      fc.double({ min: 0, max: 100, noNaN: true }),
    );
    fc.assert(
      fc.property(some, some, some, fc.integer({ min: 1, max: 10_000 }), (room, changes, session, coats) => {
        const at = (a: number) =>
          studied(
            plan(
              `room ${room.toFixed(6)} m³ air-changes ${a.toFixed(6)} per hour session ${session.toFixed(6)} hours`,
              `glaze g { colour white medium 50 % thin film 10 µm coats ${coats} }`,
            ),
          ).air!;
        const found = at(changes);
        expect(finite(found)).toBe(true);
        for (const x of [
          found.mixtureRatio,
          found.neededAirChanges,
          found.neededFreshAir,
          found.solvents[0]!.mgPerM3,
        ])
          if (x) expect(ordered(x)).toBe(true);
        const airier = at(changes + 1).mixtureRatio;
        if (airier) expect(airier.likely).toBeLessThanOrEqual(found.mixtureRatio!.likely * (1 + 1e-9));
      }),
      { numRuns: 100, seed: 7 },
    );
  });
});
