/** A film stated by its effect, as it is read, written and kept. */
import { expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { factsJson, layerFacts, meaningOf, wordsOf } from '../../language/src/plan/stated.ts';
import { findings } from '../../language/src/rules/check.ts';
import { study } from '../../language/src/study/build.ts';
import { format } from '../../language/src/syntax/format.ts';

const HEAD = 'area sky 50 %\narea sea 50 %\ngroup all = sky, sea\n';
const read = (film: string, head = 'plan "T"\n') =>
  readPlan(`${head}${HEAD}glaze g { film ${film} }\n`, 'file:///a.paintplan');
const fact = (film: string) => layerFacts(read(film).layers[0]!).find((f) => f.word === 'film')!;

test('its lightness and its area, in the words of the text and as JSON', () => {
  const plan = read('to lightness 60..65 in sky');
  expect(plan.problems).toEqual([]);
  expect(plan.layers[0]?.film).toMatchObject({
    given: 'range',
    effect: { lightness: { value: { low: 60, likely: 62.5, high: 65 } }, in: { areas: ['sky'] } },
  });
  expect(wordsOf(fact('to lightness 60..65 in sky'))).toBe('to lightness 60..65 in sky');
  expect(factsJson([fact('to lightness 60')])).toEqual({
    film: {
      lightness: { low: 60, likely: 60, high: 60, unit: null, given: 'exact', words: '60' },
      in: null,
      words: 'to lightness 60',
    },
  });
});

test('two versions mean the same where lightness and areas do, and differ else', () => {
  const meant = (film: string) => JSON.stringify(meaningOf(fact(film)));
  expect(meant('to lightness 60 in all')).toBe(meant('to lightness 60.0 in all'));
  const others = ['to lightness 61', 'to lightness 60 in sky', 'to lightness 60..61', '60 µm'];
  for (const other of others) expect(meant(other), other).not.toBe(meant('to lightness 60'));
});

test('the canonical form', () => {
  expect(format('glaze g{film  to   lightness 60 .. 65   in  sky}\n')).toEqual({
    text: 'glaze g { film to lightness 60..65 in sky }\n',
  });
});

test.each([['to lightness 120'], ['to lightness -3'], ['to lightness 60..101']])(
  '%s is beyond belief: L* ends at 0 and 100 (CIE 15)',
  (film) => {
    const plan = read(film);
    const said = findings(plan, study(plan)).filter((f) => f.rule === 'out-of-range');
    expect(said.map((f) => f.message).join()).toContain('an L* of 0 to 100');
  },
);

test.each([
  ['to lightness 60 µm', 'No unit belongs here'],
  ['to lightness 60 in skyy', 'skyy'],
  ['thin lightness 60', 'film to lightness 60'],
  ['to darkness 60', 'film to lightness 60'],
  ['to lightness', ''],
  ['to', ''],
])('%s is told', (film, words) => {
  const plan = read(film);
  const found = [...plan.problems.map((p) => p.message), ...plan.names.map((n) => (n.kind ? '' : n.name))];
  expect(found.join(' | ')).toContain(words);
  expect(found.join('')).not.toBe('');
  expect(() => study(plan).layers.map((l) => l.colours())).not.toThrow();
});

test('a record tells how thick a film is', () => {
  expect(
    read('to lightness 60', 'record "T"\n')
      .problems.map((p) => p.message)
      .join(),
  ).toContain('A record tells');
});
