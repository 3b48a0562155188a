/** Sitting cards: what is on one, which are asked for, and that nothing of it becomes markup or goes beyond a side. */
import { expect, test } from 'vitest';
import { deferringLine } from '../../language/src/materials/cautions.ts';
import { cards } from '../../language/src/report/card.ts';
import { type Asked, chosenSittings } from '../../language/src/report/card-choice.ts';
import { fitted, SIZES } from '../../language/src/report/card-fit.ts';
import { cardsPage } from '../../language/src/report/card-page.ts';
import { filmInWords, REMEDIES, TRIALS } from '../../language/src/report/card-words.ts';
import type { Block, Report } from '../../language/src/report/document.ts';
import { studied } from '../plan/text.ts';
import { fortyPaints, poisons, sixtyLayers, wordy } from './card-texts.ts';

const PEARS = `plan "Pears"
start 2027-01-11
studio { session 3 hours }
support linen 40 x 50 cm
area pear 40 %
area wall 60 %
paint white = PW6 in linseed
paint black = PBk9 in linseed
paint red = PR101 transparent in linseed
paint lead = PW1 in linseed
ground priming { material acrylic   wait 14 days }
underlayer grey { colour 3 white + 1 black   film 18 µm }
glaze warm { on pear   prepare oil-out with stand-oil   colour red   medium 75 % stand-oil   film 4 µm   coats 2 }
layer shine { on pear   colour lead   medium 30 % turpentine   film impasto }
varnish last { resin damar   after 9 months }
`;
const undated = PEARS.replace('start 2027-01-11\n', '');

const said = (block: Block): readonly string[] => {
  switch (block.kind) {
    case 'words':
      return [block.text];
    case 'list':
      return block.items;
    case 'table':
      return block.rows.map((r) => r.map((c) => (typeof c === 'string' ? c : c.text)).join(' | '));
    case 'drawing':
      return [];
  }
};
const told = (report: Report, id: string): string =>
  report.parts
    .filter((p) => p.id === id)
    .flatMap((p) => p.blocks.flatMap(said))
    .join('\n');
const cardOf = (text: string, number: number): Report => cards(studied(text))[number - 1]!.whole;

test('A card tells its own sitting: what is ready, mixed, laid, seen, minded, and what comes next', () => {
  const grey = cardOf(PEARS, 2);
  expect(grey.title).toMatch(/^Sitting 2 of 6: likely \w+day 2027-01-25$/);
  expect(grey.subtitle).toMatch(/^Pears; not before 2027-01-\d\d, safe from 2027-0\d-\d\d$/);
  expect(told(grey, 'ready')).toBe(`‘priming’: ${TRIALS.ground.text}`);
  expect(told(grey, 'mix')).toMatch(/^3 white : 1 black, about \S+ ml \(.+\)\.\n/);
  expect(told(grey, 'lay')).toMatch(
    /^Underlayer ‘grey’ over everything\. Film: thin, brushed out well \(about 18 µm dry\)\. Stays open /,
  );
  expect(told(grey, 'colour')).toMatch(
    /^pear \| ±\u00a0[\d.]+ \| ±\u00a0[\d.]+\nwall \| ±\u00a0[\d.]+ \| ±\u00a0[\d.]+\n/,
  );
  expect(told(grey, 'rags')).toMatch(/^Oily rags: /);
  expect(told(grey, 'next')).toMatch(
    /^Sitting 3, likely \w+day 2027-\d\d-\d\d \(not before .*\): glaze ‘warm’, coat 1 of 2\.$/,
  );
  expect(told(cardOf(PEARS, 6), 'next')).toBe('This is the last sitting.');
});

test('Each film is tried in its own way before it is covered', () => {
  expect(told(cardOf(PEARS, 1), 'ready')).toMatch(/bare support/);
  expect(told(cardOf(PEARS, 3), 'ready')).toBe(`‘grey’: ${TRIALS.oil.text}`);
  expect(told(cardOf(PEARS, 4), 'ready')).toBe(`‘warm’: ${TRIALS.oil.text}`);
  expect(told(cardOf(PEARS, 6), 'ready')).toBe(`‘grey’ and ‘shine’: ${TRIALS.varnish.text}`);
  for (const { source } of [...Object.values(TRIALS), ...Object.values(REMEDIES)])
    expect(source.text).not.toBe('');
});

test('Cautions are those of the sitting alone', () => {
  const minded = [1, 2, 3, 4, 5, 6].map((n) => told(cardOf(PEARS, n), 'mind'));
  expect(minded.map((m) => /^Lead: /m.test(m))).toEqual([false, false, false, false, true, false]);
  expect(minded.map((m) => /^Turpentine: /m.test(m))).toEqual([false, false, false, false, true, true]);
  expect(minded.map((m) => /^Children/m.test(m))).toEqual([false, false, false, false, true, true]);
  expect(told(cardOf(PEARS, 1), 'rags')).not.toMatch(/Oily rags/);
});

test('What may go wrong is told where it can go wrong', () => {
  expect(told(cardOf(PEARS, 1), 'remedies')).toBe('');
  expect(told(cardOf(PEARS, 2), 'remedies')).toBe(REMEDIES.sinks.text);
  // its second coat lies on a fat film
  expect(told(cardOf(PEARS, 4), 'remedies')).toBe(REMEDIES.beads.text);
  const overLead = PEARS.replace('colour red', 'colour 9 red + 1 lead');
  expect(told(cardOf(overLead, 4), 'remedies')).toBe(REMEDIES.beadsOnPoison.text);
  expect(told(cardOf(PEARS, 6), 'remedies')).toBe(REMEDIES.varnishBeads.text);
});

test('A coat between is shown as it is seen then, from what the coat before left', () => {
  const rows = (number: number) => {
    const table = cardOf(PEARS, number)
      .parts.find((p) => p.id === 'colour')!
      .blocks.find((b) => b.kind === 'table')!;
    return table.kind === 'table' ? table.rows[0]!.map((c) => (typeof c === 'string' ? c : c.swatch)) : [];
  };
  const [, before, once] = rows(3);
  const [, again, twice] = rows(4);
  expect(once).toBe(again);
  expect(new Set([before, once, twice]).size).toBe(3);
  // coat by coat it comes to what both together are predicted to give
  expect(twice).toBe(studied(PEARS).layers[2]!.colours()[0]!.hex);
});

test('What is not known is hatched, and a day nobody can tell says where to look', () => {
  const lost = PEARS.replace('paint red = PR101 transparent in linseed\n', '');
  const study = studied(lost);
  const [glaze] = cards(study).filter((c) => told(c.whole, 'lay').includes('‘warm’'));
  const page = cardsPage('Pears', [glaze!]);
  expect(page).toMatch(/<path d="[^"]+" stroke="#777777"[^>]*\/><\/svg>not known/);
  expect(cards(study).at(-1)!.whole.title).toMatch(/: day not known, see \d+:\d+$/);
});

test('In a plan without dates a day is its number', () => {
  expect(cardOf(undated, 2).title).toBe('Sitting 2 of 6: likely day 14');
  expect(cardOf(undated, 1).title).toBe('Sitting 1 of 6: day 0');
  expect(chosenSittings(studied(undated), { date: '14' })).toMatchObject([{ number: 2 }]);
});

test('What was painted says so', () => {
  const painted = PEARS.replace('film 18 µm', 'film 18 µm   painted 2027-02-01');
  expect(cardOf(painted, 2).title).toBe('Sitting 2 of 6: painted Monday 2027-02-01');
  expect(cardOf(painted, 2).subtitle).toBe('Pears');
});

const asked: readonly (readonly [string, Asked, string | RegExp])[] = [
  [PEARS, { sitting: 7 }, 'has no sitting 7: it has 6 sittings.'],
  [PEARS, { date: '2027-01-01' }, 'has no sitting on 2027-01-01: sitting 1 is on 2027-01-11.'],
  [PEARS, { date: '2029-01-01' }, /^has no sitting on 2029-01-01: sitting 6 is on 2027-\d\d-\d\d\.$/],
  [
    PEARS,
    { date: '2027-01-12' },
    'has no sitting on 2027-01-12: sitting 1 is on 2027-01-11, sitting 2 is on 2027-01-25.',
  ],
  [PEARS, { date: '2027-02-30' }, /no such day/],
  [PEARS, { date: '14' }, /^has dates: .* --date 2027-01-11\.$/],
  [undated, { date: '2027-01-11' }, /^has no dates: .*--date 14/],
  ['record "Old"\nlayer a { colour unknown }\n', {}, /^is a record: /],
  ['palette "Mine"\npaint a = PW6 in linseed\n', {}, /^is a palette: /],
  ['plan "Bare"\nsupport linen 40 x 50 cm\n', {}, 'has no layers to lay: there is no sitting.'],
];
test.each(asked)('%# a sitting that is not there is one sentence', (text, which, sentence) => {
  const chosen = chosenSittings(studied(text), which);
  if (typeof sentence === 'string') expect(chosen).toBe(sentence);
  else expect(chosen).toMatch(sentence);
});

test('A sitting is chosen by its number or its day', () => {
  expect(chosenSittings(studied(PEARS), { sitting: 2 })).toMatchObject([{ number: 2 }]);
  expect(chosenSittings(studied(PEARS), { date: '2027-01-25' })).toMatchObject([{ number: 2 }]);
  expect(chosenSittings(studied(PEARS), {})).toHaveLength(6);
});

test('A film is named by the words of the language', () => {
  expect([1.5, 5, 18, 40, 130, 900].map((um) => filmInWords(um).split(',')[0])).toEqual([
    'wash',
    'veil',
    'thin',
    'full',
    'thick',
    'impasto',
  ]);
});

test('What has no room is left out with its count, and the rags never are', () => {
  for (const text of [sixtyLayers, poisons, fortyPaints, wordy])
    for (const card of cards(studied(text))) {
      const { card: shown, size } = fitted(card, deferringLine.text);
      expect(Object.keys(SIZES)).toContain(size);
      expect(shown.parts.map((p) => p.id)).toEqual(card.whole.parts.map((p) => p.id));
      expect(told(shown, 'rags')).toMatch(/^Oily rags: /);
    }
  const { card } = fitted(cards(studied(sixtyLayers))[0]!, deferringLine.text);
  for (const id of ['mix', 'lay', 'colour']) expect(told(card, id)).toMatch(/And \d+ more: see the report\./);
  // a note without end is cut short, and what was laid stays
  expect(told(fitted(cards(studied(wordy))[0]!, deferringLine.text).card, 'lay')).toMatch(
    /^Layer ‘an-area.*\n<\/style>.*…$/s,
  );
});

test('A card of few words has the largest type', () => {
  expect(fitted(cards(studied(PEARS))[0]!, deferringLine.text).size).toBe('largest');
});

test('Words of a plan stay words', () => {
  const page = cardsPage('<i>', cards(studied(wordy), '<b>'));
  expect(page).not.toMatch(/<script|<b>|<i>|<\/style><b/);
  expect(page).toContain('&lt;script&gt;');
  expect(page).toContain('default-src &#39;none&#39;');
});
