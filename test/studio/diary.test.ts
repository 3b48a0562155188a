/** The diary and its iCalendar form, read back with a general-purpose library (ical.js, RFC 5545). */
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { exactly } from '../../language/src/materials/interval.ts';
import { diary } from '../../language/src/studio/diary.ts';
import { diaryText } from '../../language/src/studio/diary-text.ts';
import { dayWords, figureWords, rangeWords, timeWords } from '../../language/src/studio/words.ts';
import { calendarIcs } from '../../language/src/study/calendar-ics.ts';
import { studied } from '../plan/text.ts';

const text = (start: string, glaze = '') => `plan "Quinces, a jug; \\"made up\\""
${start}
support linen 50 x 40 cm
area light 20 %
area shade 80 %
paint white = PW6 in linseed
paint lead = PW1 in linseed
medium thin = 50 % turpentine + 50 % linseed
ground priming { colour lead film 80 µm wait 10 weeks }
layer body { colour white film 20 µm }
glaze warm {
  on light, shade
  prepare wipe with turpentine
  prepare oil-out with linseed
  colour white
  medium 50 % thin
  film 8 µm
  coats 3
  wipe-out light
  note "Keep the rim clear."
  ${glaze}
}
varnish final { resin damar after 9 months }`;
const plan = studied(text('start 2027-01-11'));
const IN_ORDER = ['priming 1/1', 'body 1/1', 'warm 1/3', 'warm 2/3', 'warm 3/3', 'final 1/1'];

describe('the diary', () => {
  test('one sitting a coat, in the order in which they are safe', () => {
    const entries = diary(plan);
    expect(entries.map((e) => `${e.layer} ${e.coat}/${e.coats}`)).toEqual(IN_ORDER);
    for (const [i, e] of entries.entries()) {
      expect(e.notBefore!).toBeLessThanOrEqual(e.likely!);
      expect(e.likely!).toBeLessThanOrEqual(e.safeFrom!);
      if (i > 0) expect(e.likely!).toBeGreaterThanOrEqual(entries[i - 1]!.likely!);
    }
  });

  test('what is dated comes after its own coats and after all that lies beneath it, whenever those were safe', () => {
    const dated = studied(text('start 2027-01-11', 'painted 2027-01-20'));
    expect(diary(dated).map((e) => `${e.layer} ${e.coat}/${e.coats}`)).toEqual(IN_ORDER);
  });

  test('a sitting tells what to prepare, to mix, to lay, to lift and to mind', () => {
    const warm = diary(plan).find((e) => e.layer === 'warm')!;
    expect(warm.steps).toEqual([
      expect.stringMatching(/^Wipe the dry surface with turpentine/),
      expect.stringMatching(/^Rub a breath of linseed/),
      'Take white, about 1.5 ml (a hazelnut).',
      'Add 1 thin to 1 of paint, about 1.5 ml.',
      'Lay glaze ‘warm’, coat 1 of 3, on light and shade. It dries to 8.3 to 11 µm.',
      expect.stringMatching(/^Lift the colour out of light while it is open: /),
      'Keep the rim clear.',
    ]);
    expect(warm.cautions).toContain('Turpentine');
    expect(diary(plan)[0]!.cautions).toContain('Lead');
    const mixed = warm.amounts.reduce((s, a) => s + a.ml.likely, 0);
    expect(mixed).toBeCloseTo(0.2 * 1.25 * plan.layers[2]!.composition!.wetFilm.likely, 9);
  });

  test('the terminal text numbers the sittings and defers at the end', () => {
    const printed = diaryText(plan);
    expect(printed.match(/^\d+\. /gm)).toHaveLength(6);
    expect(printed).toMatch(/^1\. priming: from 2027-01-11$/m);
    expect(printed).toMatch(/safety data sheet[^\n]*\n$/);
    expect(diaryText(studied('record "x"\nlayer a { colour PW6 }'))).toBe('');
    expect(diaryText(studied(text('')))).toMatch(/likely day \d+ \(not before day \d+, safe from day \d+\)/);
  });

  test('what is painted on one day stands together, and one mixture is mixed once', () => {
    const entries = diary(
      studied(`plan "x"
support linen 50 x 40 cm
area left 50 %
area right 50 %
paint white = PW6 in linseed
paint black = PBk9 in linseed
medium thin = 50 % turpentine + 50 % linseed
layer a { on left   colour 3 white + 1 black   medium 25 % thin   film 10 µm }
layer b { on right   colour 3 white + 1 black   medium 25 % thin   film 10 µm }
layer c { on right   colour white   film 10 µm }`),
    );
    expect(entries.map((e) => e.sitting)).toEqual([1, 1, 2]);
    expect(entries[0]!.steps.slice(0, 2)).toEqual([
      'Mix 3 white : 1 black, about 3 ml (two hazelnuts).',
      'Add 1 thin to 3 of paint, about 0.7 ml (14 drops).',
    ]);
    expect(entries[1]!.steps[0]).toBe('Take of the mixture for ‘a’.');
  });

  test('ten thousand coats and an empty plan', () => {
    expect(diary(studied(text('start 2027-01-11').replace('coats 3', 'coats 10000'))).length).toBeLessThan(
      200,
    );
    expect(diary(studied('plan "x"'))).toEqual([]);
  });
});

describe('iCalendar', () => {
  const read = (ics: string) =>
    new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents('vevent').map((v) => new ICAL.Event(v));

  test('every sitting comes back on its day with its words', () => {
    const events = read(calendarIcs(plan));
    const entries = diary(plan);
    expect(events.map((e) => e.summary)).toEqual([
      'priming',
      'body',
      'warm (coat 1 of 3)',
      'warm (coat 2 of 3)',
      'warm (coat 3 of 3)',
      'final',
    ]);
    events.forEach((e, i) => {
      expect(e.startDate.isDate).toBe(true);
      expect(e.startDate.toString()).toBe(dayWords(entries[i]!.likely!, true, 'up'));
      expect(e.duration.toSeconds()).toBe(86_400);
      for (const step of entries[i]!.steps) expect(e.description).toContain(step);
    });
    expect(new Set(events.map((e) => e.uid)).size).toBe(events.length);
  });

  test('the title survives quotes, commas and semicolons', () => {
    const calendar = new ICAL.Component(ICAL.parse(calendarIcs(plan)));
    expect(calendar.getFirstPropertyValue('x-wr-calname')).toBe(plan.plan.title);
  });

  test('the same plan gives the same text, whatever the clock and the time zone', () => {
    const before = process.env.TZ;
    const texts = ['UTC', 'Pacific/Kiritimati', 'America/Los_Angeles'].map((zone) => {
      process.env.TZ = zone;
      return calendarIcs(studied(text('start 2027-01-11')));
    });
    process.env.TZ = before;
    expect(new Set(texts).size).toBe(1);
    const stamps = texts[0]!.match(/^DTSTAMP:.*$/gm)!.map((s) => s.trim());
    expect(new Set(stamps)).toEqual(new Set(['DTSTAMP:20270111T000000Z']));
  });

  test('painted coats are confirmed on their day, the rest tentative', () => {
    const s = studied(text('start 2027-01-11', 'painted 2027-08-01'));
    const events = read(calendarIcs(s));
    const painted = events.find((e) => e.summary === 'warm (coat 3 of 3)')!;
    expect(painted.startDate.toString()).toBe('2027-08-01');
    expect(painted.component.getFirstPropertyValue('status')).toBe('CONFIRMED');
    expect(events[0]!.component.getFirstPropertyValue('status')).toBe('TENTATIVE');
  });

  test('lines are folded at 75 octets and end with CR LF', () => {
    const ics = calendarIcs(plan);
    expect(ics.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of ics.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });

  test('without dates there is nothing to enter', () => {
    expect(read(calendarIcs(studied(text(''))))).toEqual([]);
  });
});

test('figures in words carry no more digits than an estimate', () => {
  expect(figureWords(0.64321)).toBe('0.64');
  expect(figureWords(1234)).toBe('1200');
  expect(figureWords(Number.NaN)).toBe('?');
  expect(rangeWords({ low: 1, likely: 2, high: 3 }, 'ml')).toBe('1 to 3 ml');
  expect(rangeWords({ low: 2.99, likely: 3, high: 3.01 }, 'ml')).toBe('about 3 ml');
  expect(rangeWords(exactly(4), 'µm')).toBe('4 µm');
  expect(timeWords({ low: 0.1, likely: 0.5, high: 1 })).toBe('12 hours (2.4–24)');
  expect(dayWords(0.4, true)).toBe('1970-01-01');
  expect(dayWords(0.4, true, 'up')).toBe('1970-01-02');
});
