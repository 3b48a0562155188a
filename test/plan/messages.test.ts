/** What the tool says to each slip: at which place (between ⟦ and ⟧; `|` marks a place without width), in which words, and what the fix makes of it. */
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';

function told(marked: string) {
  const start = marked.search(/[⟦|]/);
  const text = marked.replace(/[⟦⟧|]/g, '');
  const end = marked.includes('⟦') ? marked.indexOf('⟧') - 1 : start;
  const problems = readPlan(text, 'file:///m.paintplan').problems;
  const fix = problems[0]?.fixes?.[0];
  const fixed =
    fix &&
    [...fix.edits]
      .reverse()
      .reduce((t, e) => t.slice(0, e.place.start) + e.text + t.slice(e.place.end), text);
  return { problems, start, end, fixed };
}

const cases: readonly (readonly [text: string, message: string, fixed?: string])[] = [
  // a missing word, at the end of the one before
  [
    'glaze a {\n  colour|\n}',
    'After ‘colour’ I expected a paint or mix, or a colour, for instance ‘colour burnt-sienna’.',
  ],
  ['glaze a {\n  colour 2 PB29 +|\n}', 'After ‘+’ I expected another paint or mix.'],
  [
    'glaze a {\n  film|\n}',
    'After ‘film’ I expected a thickness in µm, or wash, veil, thin, full, impasto, or to lightness and an L*, for instance ‘film 8 µm’.',
  ],
  [
    'glaze a {\n  medium 40 %|\n}',
    'After ‘%’ I expected the medium it is a share of, for instance ‘medium 40 % rich’.',
  ],
  [
    'glaze a {\n  on|\n}',
    'After ‘on’ I expected areas, and perhaps except, for instance ‘on sky, water except moon’.',
  ],
  ['area sky 50 %\narea sea 50 %\nglaze a {\n  on sky,|\n}', 'After ‘,’ I expected another area.'],
  [
    'area sky 50 %\narea sea 50 %\nglaze a {\n  on sky| sea\n}',
    'After ‘sky’ I expected a comma before ‘sea’.',
    'area sky 50 %\narea sea 50 %\nglaze a {\n  on sky, sea\n}',
  ],
  [
    'glaze a {\n  prepare oil-out with|\n}',
    'After ‘with’ I expected what it is prepared with, for instance ‘with walnut’.',
  ],
  ['glaze a {\n  painted|\n}', 'After ‘painted’ I expected a date, for instance ‘painted 2027-01-14’.'],
  ['area| 40 %', 'After ‘area’ I expected a name and its share, for instance ‘area sky 50 %’.'],
  [
    'paint blue| PB29 in linseed',
    'After ‘blue’ I expected =, for instance ‘paint warm-white = 9 PW6 + 1 PY43 in linseed’.',
    'paint blue = PB29 in linseed',
  ],
  [
    'paint blue =|',
    'After ‘=’ I expected pigments and their binder, for instance ‘= 9 PW6 + 1 PY43 in linseed’.',
  ],
  [
    'paint blue = PB29|',
    'After ‘PB29’ I expected in and a binder, for instance ‘in linseed’.',
    'paint blue = PB29 in linseed',
  ],
  [
    'paint blue = PB29| linseed',
    'After ‘PB29’ I expected in before ‘linseed’.',
    'paint blue = PB29 in linseed',
  ],
  ['paint blue = PB29 in|', 'After ‘in’ I expected a binder, for instance ‘in linseed’.'],
  [
    'paint grey = 9 PW6| 1 PBk9 in linseed',
    'After ‘PW6’ I expected + before ‘1’.',
    'paint grey = 9 PW6 + 1 PBk9 in linseed',
  ],
  ['medium lean = 50 %|', 'After ‘%’ I expected an oil, a resin, a solvent or a medium.'],
  ['plan|', 'After ‘plan’ I expected a title in quotes, for instance ‘plan "Three pears"’.'],
  ['start|', 'After ‘start’ I expected a date, for instance ‘start 2027-01-11’.'],
  [
    'glaze| {\n  film thin\n}',
    'After ‘glaze’ I expected a name and its fields in braces, for instance ‘glaze warm { film thin }’.',
  ],
  ['glaze warm|', 'After ‘warm’ I expected its fields in braces, for instance ‘glaze warm { film thin }’.'],
  // braces and quotes
  [
    'glaze a {\n  film thin|\n\narea sky 50 %',
    'The braces of ‘glaze’ are not closed: I expected } after this.',
    'glaze a {\n  film thin\n}\n\narea sky 50 %',
  ],
  [
    'glaze a|\n  film thin\n}',
    'The fields of ‘glaze’ stand in braces: I expected { after this.',
    'glaze a {\n  film thin\n}',
  ],
  [
    'area sky 50 %\n⟦}⟧',
    'This } closes nothing: the braces before it are closed already.',
    'area sky 50 %\n',
  ],
  ['glaze a {\n  ⟦{⟧\n  film thin\n  }\n}', 'Braces do not stand within braces here.'],
  ['note ⟦"never closed⟧', 'These quotes are not closed on this line.', 'note "never closed"'],
  [
    'glaze a {\n  note ⟦Keep the rim on the light film clear⟧\n}',
    'The words after ‘note’ stand in quotes: note "…".',
    'glaze a {\n  note "Keep the rim on the light film clear"\n}',
  ],
  ['glaze a { note ⟦"open⟧ }', 'These quotes are not closed on this line.', 'glaze a { note "open" }'],
  [
    '⟦/*⟧ never closed\narea sky 50 %',
    'Nothing closes this comment, so it ends with its line: I expected */.',
  ],
  // words
  [
    '⟦glaz⟧ warm {\n  film thin\n}',
    '‘glaz’ begins no declaration. Did you mean ‘glaze’?',
    'glaze warm {\n  film thin\n}',
  ],
  [
    '⟦warm⟧ {\n  film thin\n}',
    '‘warm’ begins no declaration. What kind of layer is it: ground, underlayer, glaze …?',
  ],
  [
    'glaze a {\n  ⟦flm⟧ 8 µm\n}',
    '‘flm’ is no field of a glaze. Did you mean ‘film’?',
    'glaze a {\n  film 8 µm\n}',
  ],
  ['glaze a {\n  ⟦temperature⟧ 18 °C\n}', '‘temperature’ is no field of a glaze. It belongs to a studio.'],
  [
    'area ⟦ground⟧ 40 %',
    '‘ground’ is a word of the language and cannot be a name: say for instance ‘the-ground’.',
  ],
  [
    'paint ⟦m⟧ = PB29 in linseed',
    '‘m’ is a unit and cannot be the name of something that is mixed: say for instance ‘the-m’.',
  ],
  ['area ⟦x2⟧ 20 %', '‘x2’ begins like the ‘x’ of 40 x 50 and cannot be a name: say for instance ‘the-x2’.'],
  [
    'paint ⟦PB29⟧ = PB29 in linseed',
    '‘PB29’ is a Colour Index code; what you declare has a name of its own.',
  ],
  ['mix a = ⟦1/2⟧ white + 1 PBk9', 'Fractions are written with a point: 0.5.', 'mix a = 0.5 white + 1 PBk9'],
  [
    'glaze a {\n  colour 2 white + ⟦1/3⟧ PBk9\n}',
    'Fractions are written with a point: 0.333.',
    'glaze a {\n  colour 2 white + 0.333 PBk9\n}',
  ],
  [
    'glaze a {\n  colour 2 white + ⟦1½⟧ PBk9\n}',
    'Fractions are written with a point: 1.5.',
    'glaze a {\n  colour 2 white + 1.5 PBk9\n}',
  ],
  ['mix a = ⟦½⟧ white + 1 PBk9', 'Fractions are written with a point: 0.5.', 'mix a = 0.5 white + 1 PBk9'],
  [
    'glaze a {\n  film ⟦thck⟧\n}',
    '‘thck’ is no film: write a thickness such as 8 µm, or a word: wash, veil, thin, full or impasto.',
    'glaze a {\n  film wash\n}',
  ],
  [
    'glaze a {\n  film to ⟦lightnes⟧ 60\n}',
    'A film by its effect is written ‘film to lightness 60’.',
    'glaze a {\n  film to lightness 60\n}',
  ],
  [
    'glaze a {\n  prepare ⟦abrad⟧\n}',
    '‘abrad’ is no preparation: wipe, abrade, oil-out, wash.',
    'glaze a {\n  prepare abrade\n}',
  ],
  // figures
  ['glaze a {\n  film ⟦8-12 µm⟧\n}', 'A range is written 8..12 µm.', 'glaze a {\n  film 8..12 µm\n}'],
  ['glaze a {\n  film ⟦8–12 µm⟧\n}', 'A range is written 8..12 µm.', 'glaze a {\n  film 8..12 µm\n}'],
  ['glaze a {\n  film ⟦8 - 12 µm⟧\n}', 'A range is written 8..12 µm.', 'glaze a {\n  film 8..12 µm\n}'],
  ['glaze a {\n  film ⟦0,5⟧ mm\n}', 'Decimals are written with a point: 0.5.', 'glaze a {\n  film 0.5 mm\n}'],
  ['mix a = ⟦0,5⟧ PB29 + 1 PW6', 'Decimals are written with a point: 0.5.', 'mix a = 0.5 PB29 + 1 PW6'],
  ['glaze a {\n  film ⟦8⟧\n}', 'This needs a unit: 8 µm.', 'glaze a {\n  film 8 µm\n}'],
  ['paint a = PW6 in linseed tube ⟦40⟧', 'This needs a unit: 40 ml.', 'paint a = PW6 in linseed tube 40 ml'],
  ['paint a = PW6 in linseed tube|', 'After ‘tube’ I expected what it holds, for instance ‘tube 40 ml’.'],
  ['paint a = PW6 in linseed price ⟦12.50⟧', 'This needs a currency: 12.50 and three letters such as EUR.'],
  [
    'paint a = PW6 in linseed price 12.50 ⟦Taler⟧ tube 40 ml',
    '‘Taler’ is no currency: write its three letters, such as EUR.',
  ],
  [
    'paint a = PW6 in linseed price 12.50 ⟦eur⟧',
    'Currencies are written in capitals: EUR.',
    'paint a = PW6 in linseed price 12.50 EUR',
  ],
  ['glaze a {\n  wait ⟦3 µm⟧\n}', '‘µm’ does not measure this; write hour, hours, h, day, days, week.'],
  ['glaze a {\n  coats ⟦3 µm⟧\n}', 'No unit belongs here: write 3.'],
  [
    'glaze a {\n  film ⟦12..8 µm⟧\n}',
    'A range goes from the smaller figure to the larger.',
    'glaze a {\n  film 8..12 µm\n}',
  ],
  ['record "x"\nmade ⟦1640-1660⟧', 'A range of years is written 1640..1660.', 'record "x"\nmade 1640..1660'],
  // dates
  [
    'start ⟦2027-1-5⟧',
    'A date is written with two digits for month and day: 2027-01-05.',
    'start 2027-01-05',
  ],
  ['start ⟦2027-02-30⟧', 'There is no day 2027-02-30. A date is year-month-day, for instance 2027-01-05.'],
  ['start ⟦2027-13-01⟧', 'There is no day 2027-13-01. A date is year-month-day, for instance 2027-01-05.'],
  ['start ⟦5.1.2027⟧', 'A date is written year-month-day: 2027-01-05.', 'start 2027-01-05'],
  ['start ⟦2027/01/05⟧', 'A date is written year-month-day: 2027-01-05.', 'start 2027-01-05'],
  ['start ⟦05/01/2027⟧', 'A date is written year-month-day, for instance 2027-01-05.'],
  // colours
  ['glaze a {\n  colour ⟦#12345⟧\n}', ''],
  ['glaze a {\n  colour ⟦lab(1 2)⟧\n}', ''],
  ['glaze a {\n  allow ⟦lean-over-fat⟧\n}', ''],
];

describe('messages', () => {
  test.each(cases.map((c) => [c[0], c] as const))('%j', (marked, [, message, fixed]) => {
    const { problems, start, end, fixed: made } = told(marked);
    expect(problems.map((p) => p.message)).toHaveLength(1);
    if (message) expect(problems[0]?.message).toBe(message);
    if (!marked.includes('allow'))
      expect([problems[0]?.place.start, problems[0]?.place.end]).toEqual([start, end]);
    if (fixed !== undefined) {
      expect(made).toBe(fixed);
      expect(readPlan(fixed, 'file:///m.paintplan').problems.map((p) => p.message)).toEqual([]);
    }
  });

  test('one problem a fault, and the rest of the block is read', () => {
    const plan = readPlan(
      'glaze a {\n  on\n  colour\n  flm 8 µm\n  coats 2\n  wait ; 3 days\n  note "x"\n}\narea sky 100 %',
      'file:///m.paintplan',
    );
    expect(plan.problems).toHaveLength(4);
    expect(plan.layers[0]).toMatchObject({
      coats: { value: { likely: 2 } },
      wait: { value: { likely: 3 } },
      notes: ['x'],
    });
    expect(plan.areas[0]?.name).toBe('sky');
  });
});
