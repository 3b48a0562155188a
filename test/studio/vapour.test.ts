/**
 * The box model against published unit conversions, the worked room cases of the reference, and a numerical integration
 * of its differential equation. Ids in brackets are those of the project's list of test vectors.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leadLimit } from '../../language/src/studio/lead.ts';
import {
  concentration,
  decayed,
  mgPerM3ToPpm,
  mixtureRatio,
  mlToReach,
  mmHgToKPa,
  neededAirChanges,
  neededFreshAir,
  ppmToMgPerM3,
  purgeHours,
  roomFault,
  saturationPpm,
} from '../../language/src/studio/vapour.ts';

describe('units at 25 °C, 24.45 l/mol', () => {
  test('[PPM-toluene] 100 ppm of toluene are 377 mg/m³ (published converter example)', () => {
    expect(Math.abs(ppmToMgPerM3(100, 92.14) - 377)).toBeLessThan(1);
  });
  test('[PPM-NH3] 50 mg/m³ of ammonia are 71.785 ppm (published converter example)', () => {
    expect(Math.abs(mgPerM3ToPpm(50, 17.03) - 71.785)).toBeLessThan(0.05);
  });
  test.each([
    ['PPM-NIOSH-turpentine', 136, 5.56],
    ['PPM-NIOSH-isopropanol', 60.1, 2.46],
    ['PPM-NIOSH-ethanol', 46.1, 1.89],
  ])('[%s] the factor printed in the NIOSH Pocket Guide to Chemical Hazards', (_, molarMass, factor) => {
    expect(Math.abs(ppmToMgPerM3(1, molarMass) - factor)).toBeLessThan(0.01);
  });
  test('[SAT-turps] turpentine at 4 mmHg (NIOSH) saturates the air at 5263 ppm', () => {
    expect(Math.abs(saturationPpm(mmHgToKPa(4)) - 5263)).toBeLessThan(5);
    expect(saturationPpm(850)).toBe(1e6);
  });
});

const TURPENTINE = { density: 0.86, molarMass: 136 }; // NIOSH Pocket Guide
const mg = 20 * TURPENTINE.density * 1000;
const inRoom = (hours: number, airChanges: number) => concentration(mg, hours, { volume: 30, airChanges })!;

describe('20 ml of turpentine in 30 m³ (arithmetic of the reference; NIOSH limit 100 ppm)', () => {
  test('[ROOM-turps-sealed] 573 mg/m³, 103.1 ppm: over the limit', () => {
    expect(Math.abs(inRoom(4, 0) - 573)).toBeLessThan(1);
    expect(Math.abs(mgPerM3ToPpm(inRoom(4, 0), TURPENTINE.molarMass) - 103.1)).toBeLessThan(0.1);
  });
  test.each([
    ['ROOM-turps-4h-0.5ACH', 0.5, 247.9, 44.6],
    ['ROOM-turps-4h-2ACH', 2, 71.6, 12.9],
    ['ROOM-turps-4h-6ACH', 6, 23.9, 4.3],
  ])('[%s]', (_, airChanges, mgPerM3, ppm) => {
    expect(Math.abs(inRoom(4, airChanges) - mgPerM3)).toBeLessThan(0.2);
    expect(Math.abs(mgPerM3ToPpm(inRoom(4, airChanges), TURPENTINE.molarMass) - ppm)).toBeLessThan(0.2);
  });
  test('[ROOM-spirit-limit] 13.5 ml of white spirit reach 350 mg/m³ (NIOSH REL) in the sealed room', () => {
    expect(Math.abs(mlToReach(350, 30, 0.78) - 13.5)).toBeLessThan(0.1);
  });
});

test('[LEAD-PEL-hours] 40 µg/m³ of lead over ten hours (OSHA 29 CFR 1910.1025: 400/hours)', () => {
  expect(leadLimit(10)).toBeCloseTo(40, 10);
  expect(leadLimit(8)).toBe(50);
  expect(leadLimit(3)).toBe(50);
});

/** Fourth-order Runge–Kutta on dC/dt = G/V − aC, an independent road to the same figure. */
function integrate(mgPerHour: number, volume: number, a: number, hours: number): number {
  const f = (c: number) => mgPerHour / volume - a * c;
  const steps = 4000;
  const h = hours / steps;
  let c = 0;
  for (let i = 0; i < steps; i++) {
    const k1 = f(c);
    const k2 = f(c + (h * k1) / 2);
    const k3 = f(c + (h * k2) / 2);
    const k4 = f(c + h * k3);
    c += (h * (k1 + 2 * k2 + 2 * k3 + k4)) / 6;
  }
  return c;
}

const nonNegative = (max: number) => fc.double({ min: 0, max, noNaN: true });

describe('the box as such', () => {
  test('agrees with a numerical integration of its equation', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.double({ min: 5, max: 500, noNaN: true }),
        nonNegative(20),
        fc.double({ min: 0.1, max: 12, noNaN: true }),
        (all, volume, a, hours) => {
          const exact = integrate(all / hours, volume, a, hours);
          expect(concentration(all, hours, { volume, airChanges: a })! / exact).toBeCloseTo(1, 8);
        },
      ),
      { numRuns: 40, seed: 1 },
    );
  });

  test('a trace of airing leads smoothly into the sealed room', () => {
    expect(inRoom(4, 1e-12) / inRoom(4, 0)).toBeCloseTo(1, 10);
    expect(inRoom(4, Number.MIN_VALUE)).toBe(inRoom(4, 0));
  });

  test('poor mixing lies between the well-mixed and the sealed room', () => {
    const room = { volume: 30, airChanges: 2 };
    const poor = concentration(mg, 4, room, 3)!;
    expect(poor).toBeGreaterThan(concentration(mg, 4, room)!);
    expect(poor).toBeLessThan(inRoom(4, 0));
  });

  test('a room without volume, a session without length, a negative figure: a reason, never NaN', () => {
    expect(roomFault({ volume: 0, airChanges: 2 }, 3)).toMatch(/holds no air/);
    expect(concentration(mg, 3, { volume: 0, airChanges: 2 })).toBeUndefined();
    expect(concentration(mg, 0, { volume: 30, airChanges: 2 })).toBe(inRoom(4, 0));
    expect(roomFault({ volume: 30, airChanges: -1 }, 3)).toMatch(/0 or more/);
    expect(roomFault({ volume: 30, airChanges: 1 }, Number.NaN)).toMatch(/0 hours or more/);
  });

  test('any figures whatever: a finite share or nothing', () => {
    const any = fc.double();
    fc.assert(
      fc.property(any, any, any, any, any, (m, hours, volume, airChanges, mixing) => {
        const c = concentration(m, hours, { volume, airChanges }, mixing);
        if (c !== undefined) expect(Number.isFinite(c) && c >= 0).toBe(true);
        for (const x of [
          neededAirChanges(m, hours, mixing),
          neededFreshAir(m, hours, mixing),
          purgeHours(m, hours, volume),
        ])
          if (x !== undefined) expect(x).not.toBeNaN();
      }),
      { numRuns: 2000, seed: 2 },
    );
  });
});

describe('airing', () => {
  test('decay and purge are each other’s inverse', () => {
    expect(decayed(573, purgeHours(573, 57.3, 2)!, 2)).toBeCloseTo(57.3, 9);
    expect(purgeHours(573, 57.3, 1)).toBeCloseTo(Math.LN10, 12);
    expect(purgeHours(573, 57.3, 0)).toBeUndefined();
    expect(purgeHours(1, 2, 0)).toBe(0);
  });

  test('two halves of their limits make a whole', () => {
    expect(
      mixtureRatio([
        { concentration: 50, limit: 100 },
        { concentration: 175, limit: 350 },
      ]),
    ).toBe(1);
  });

  test('the air changes asked for bring the session’s end to the limit, and no more are asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        fc.double({ min: 0.1, max: 12, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (sealed, hours, mixing) => {
          const a = neededAirChanges(sealed, hours, mixing)!;
          const reached = concentration(sealed, hours, { volume: 1, airChanges: a }, mixing)!;
          if (sealed <= 1) expect(a).toBe(0);
          else expect(reached).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 300, seed: 3 },
    );
    expect(neededAirChanges(1.03, 4)).toBeGreaterThan(0);
    expect(neededAirChanges(2, 0)).toBeUndefined();
  });

  test('fresh air for a room of unknown size holds the limit in any room, small or large', () => {
    const limit = 560;
    const flow = neededFreshAir(mg / limit, 4)!;
    for (const volume of [1, 30, 3000])
      expect(concentration(mg, 4, { volume, airChanges: flow / volume })!).toBeLessThanOrEqual(
        limit * (1 + 1e-12),
      );
  });
});
