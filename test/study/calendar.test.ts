import { describe, expect, it } from 'vitest';
import { studied } from '../plan/text.ts';

const MADE_OF = `paint sienna = PBr7 burnt-sienna in linseed
medium oily = 100 % walnut
`;
const glaze = (name: string, more = '') =>
  `glaze ${name} { colour sienna   medium 50 % oily   film 10 µm   ${more} }\n`;
/** A plan of one area, or of what `head` says. */
const of = (layers: string, head = 'area all 100 %', kind = 'plan') => {
  const result = studied(`${kind} "Test"\nsupport linen 40 x 50 cm\n${head}\n${MADE_OF}${layers}`);
  return { result, entries: result.calendar.entries, dated: result.calendar.dated };
};
const day = (iso: string) => Date.parse(iso) / 86_400_000;

describe('the calendar', () => {
  it('lays one layer on another when it is ready, on three clocks', () => {
    const { entries, result, dated } = of(glaze('a') + glaze('b'));
    const { ready } = result.layers[0]!.drying!;
    expect(dated).toBe(false);
    expect(entries[0]).toMatchObject({ layer: 'a', notBefore: 0, likely: 0, safeFrom: 0 });
    expect(entries[1]).toMatchObject({
      notBefore: expect.closeTo(ready.low, 9),
      likely: ready.likely,
      safeFrom: expect.closeTo(ready.high, 9),
      heldBy: { layer: 'a', area: 'all' },
    });
  });

  it('lets areas that share nothing go their own ways, and tells which held it', () => {
    const { entries } = of(
      glaze('a', 'on left') + glaze('b', 'on right   wait 90 days') + glaze('c'),
      'area left 50 %\narea right 50 %',
    );
    expect(entries[1]!.safeFrom).toBe(0);
    expect(entries[2]).toMatchObject({ notBefore: 90, safeFrom: 90, heldBy: { layer: 'b', area: 'right' } });
    expect(entries[2]!.heldBy!.reason).toContain('wait');
    // a may be late by what b takes longer
    expect(entries[0]!.daysToSpare).toBeGreaterThan(60);
    expect(entries[1]!.daysToSpare).toBe(0);
    expect(entries[2]!.daysToSpare).toBeUndefined();
  });

  it('counts coats one by one', () => {
    const { entries, result } = of(glaze('a', 'coats 3') + glaze('b'));
    const ready = result.layers[0]!.drying!.ready.likely;
    expect(entries.map((e) => [e.layer, e.coat])).toEqual([
      ['a', 1],
      ['a', 2],
      ['a', 3],
      ['b', 1],
    ]);
    expect(entries.map((e) => e.likely! / ready)).toEqual([0, 1, 2, 3].map((n) => expect.closeTo(n, 9)));
  });

  it('lets thirty alkyd glazes end within a season, whether they are coats or layers', () => {
    const thirty = Array.from({ length: 30 }, (_, i) => glaze(`g${i}`).replace('oily', 'quick')).join('');
    const head = 'start 2026-11-30\narea all 100 %\nmedium quick = 50 % alkyd + 50 % walnut';
    const { entries, result } = of(thirty, head);
    const last = entries.at(-1)!;
    const { ready } = result.layers[0]!.drying!;
    expect(last.likely! - entries[0]!.likely!).toBeCloseTo(29 * ready.likely, 6);
    // nearer to the likely day than if every coat were as quick, or as slow, as it might be
    expect(last.safeFrom! - last.likely!).toBeLessThan(0.75 * 29 * (ready.high - ready.likely));
    expect(last.likely! - last.notBefore!).toBeLessThan(0.75 * 29 * (ready.likely - ready.low));
    const coats = of(glaze('g', 'coats 30').replace('oily', 'quick'), head).entries.at(-1)!;
    for (const end of ['notBefore', 'likely', 'safeFrom'] as const)
      expect(coats[end]).toBeCloseTo(last[end]!, 6);
  });

  it('begins anew from a day that is written', () => {
    const { entries, result } = of(
      `${glaze('a', 'coats 9')}${glaze('b', 'painted 2027-03-01')}${glaze('c')}`,
      'start 2027-01-01\narea all 100 %',
    );
    const { ready } = result.layers[1]!.drying!;
    const c = entries.at(-1)!;
    expect(c.safeFrom! - c.notBefore!).toBeCloseTo(ready.high - ready.low, 9);
  });

  it('counts `after` from the day the layer beneath was laid', () => {
    const { entries } = of(`${glaze('a')}varnish v { after 270 days }`, 'start 2027-01-11\narea all 100 %');
    expect(entries[1]!.notBefore! - entries[0]!.notBefore!).toBe(270);
    expect(entries[1]!.heldBy!.layer).toBe('a');
  });

  it('takes what was painted as done, and tells how early it was', () => {
    const start = day('2027-01-01');
    const { entries, dated, result } = of(
      glaze('a', 'painted 2027-01-05') + glaze('b', 'painted 2027-01-06') + glaze('c'),
      'start 2027-01-01\narea all 100 %',
    );
    expect(dated).toBe(true);
    const { ready } = result.layers[0]!.drying!;
    expect(entries[1]!.safeFrom).toBeCloseTo(start + 4 + ready.high, 9);
    expect(entries[1]!.daysToSpare).toBeCloseTo(1 - ready.high, 9);
    expect(entries[2]!.notBefore).toBeCloseTo(start + 5 + result.layers[1]!.drying!.ready.low, 9);
    expect(entries[2]!.painted).toBeUndefined();
  });

  it('has dates from `painted` alone, beginning with the first', () => {
    const { entries, dated } = of(glaze('a', 'painted 2027-03-01') + glaze('b'));
    expect(dated).toBe(true);
    expect(entries[0]!.safeFrom).toBe(day('2027-03-01'));
  });

  it('waits for a ground as the table says', () => {
    const { entries } = of(`ground g { material acrylic }\n${glaze('a')}`);
    expect(entries[1]).toMatchObject({ notBefore: 3, likely: 14, safeFrom: 30 });
  });

  it('lays the coats of a water-borne ground within days, and waits before what comes next', () => {
    // eight coats of chalk in glue are laid in a day or two (common practice)
    const { entries } = of(`ground g { material chalk-glue   coats 8   wait 2 weeks }\n${glaze('a')}`);
    expect(entries[7]).toMatchObject({ layer: 'g', coat: 8 });
    expect(entries[7]!.likely).toBeLessThan(2);
    expect(entries[7]!.safeFrom).toBeLessThanOrEqual(7);
    expect(entries[7]!.heldBy!.reason).toMatch(/next coat in 3.6 hours \(0.96–24\)/);
    expect(entries[8]!.notBefore! - entries[7]!.notBefore!).toBeCloseTo(14, 9);
    expect(entries[8]!.heldBy!.reason).toBe('wait 2 weeks');
  });

  it('waits once for a layer of several coats of paint, before the next', () => {
    const { entries, result } = of(glaze('a', 'coats 3   wait 90 days') + glaze('b'));
    const ready = result.layers[0]!.drying!.ready.likely;
    expect(entries[2]!.likely).toBeCloseTo(2 * ready, 9);
    expect(entries[3]!.likely).toBeCloseTo(2 * ready + 90, 9);
  });

  it('says what is ready at once so', () => {
    const { entries } = of(`drawing d { material charcoal }\n${glaze('a')}`);
    expect(entries[1]!.heldBy!.reason).toBe('ready at once to 24 hours');
  });

  it('takes a board that was bought primed as it is: nothing else is laid before the start', () => {
    const start = day('2027-02-01');
    const { entries } = of(
      `ground g { material acrylic   painted 2026-06-01 }\n${glaze('a')}`,
      'start 2027-02-01\narea all 100 %',
    );
    expect(entries[0]).toMatchObject({ painted: day('2026-06-01'), daysToSpare: 0 });
    expect(entries[1]).toMatchObject({ notBefore: start, safeFrom: start });
  });

  it('is empty for a record', () => {
    expect(of(glaze('a'), 'area all 100 %', 'record').entries).toEqual([]);
  });

  it('ten thousand coats are told shortly, and count in full', () => {
    const { entries, result } = of(glaze('a', 'coats 10000') + glaze('b'));
    expect(entries.length).toBe(101);
    expect(entries[99]!.coat).toBe(10_000);
    expect(entries[100]!.likely).toBeCloseTo(10_000 * result.layers[0]!.drying!.ready.likely, 3);
  });

  it('never leaves the years that can be written', () => {
    const { entries } = of(
      glaze('a', 'coats 100000   wait 1000000000 days') + glaze('b'),
      'start 2027-01-01\narea all 100 %',
    );
    for (const e of entries) expect(() => new Date(e.safeFrom! * 86_400_000).toISOString()).not.toThrow();
  });
});
