/** What is not known is not ready: no date stands on a layer that cannot be computed, in any form a plan is read in. */
import { expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { lenses } from '../../language/src/features/lenses.ts';
import { buildReport, noticeOf } from '../../language/src/report/build.ts';
import { htmlReport } from '../../language/src/report/html.ts';
import { markdownReport } from '../../language/src/report/markdown.ts';
import { sectionDrawing } from '../../language/src/report/section.ts';
import type { Finding } from '../../language/src/rules/rule.ts';
import { diaryText } from '../../language/src/studio/diary-text.ts';
import { materialsCsv } from '../../language/src/studio/quantities.ts';
import { calendarIcs } from '../../language/src/study/calendar-ics.ts';
import { studyJson } from '../../language/src/study/json.ts';

const read = (layers: string, start = 'start 2027-01-11') =>
  createAnalyser()(
    `plan "Trial, invented"
${start}
support linen 40 x 30 cm
area sky 50 %
area sea 50 %
paint white = PW6 in linseed
${layers}
`,
    'file:///p.paintplan',
  );

/** Of each coat `layer date`, or `layer line:column` where there is none. */
const days = (layers: string) =>
  read(layers).study.calendar.entries.map((e) =>
    e.notKnown
      ? `${e.layer} ${e.notKnown.line}:${e.notKnown.column}`
      : `${e.layer} ${new Date(Math.ceil(e.safeFrom!) * 86_400_000).toISOString().slice(0, 10)}`,
  );

const MISSPELT = `underlayer first { on sky   colour whitte   film 20 µm }
layer second { on sky   colour white   film 30 µm }
layer third { on sea   colour white   film 30 µm }
layer last { colour white   film 30 µm }`;

test('the unknown spreads upwards, and only upwards', () => {
  expect(days(MISSPELT)).toEqual(['first 2027-01-11', 'second 7:36', 'third 2027-01-11', 'last 7:36']);
});

test.each([
  ['a misspelt paint in a mix', 'mix grey = 2 white + 1 blakc\nlayer a { colour grey }', '7:24'],
  ['a misspelt medium', 'layer a { colour white   medium 20 % leen }', '7:38'],
  [
    'a misspelt part of a medium',
    'medium lean = 1 linsed + 1 turpentine\nlayer a { colour white   medium 20 % lean }',
    '7:17',
  ],
  ['a misspelt material', 'ground a { material chalkglue }', '7:21'],
  ['a misspelt resin', 'varnish a { resin dammarr }', '7:19'],
  ['amounts that do not add up', 'layer a { colour 2 g white + 1 ml PB29 }', '7:18'],
  ['a mix of itself', 'mix murk = 1 murk + 1 white\nlayer a { colour murk }', '7:14'],
  ['nothing said of it', 'layer a { film 20 µm }', '7:7'],
  ['a colour without a paint', 'layer a { colour #886644 }', '7:18'],
])('%s', (_, layers, place) => {
  expect(days(`${layers}\nlayer above { colour white }`).at(-1)).toBe(`above ${place}`);
});

test.each([
  ['lines of a drawing', 'drawing a { film veil }'],
  ['a board bought with its ground', 'ground a { colour #efe8d8 }'],
  ['leaf', 'leaf a { }'],
])('what has nothing to dry lets the next follow at once: %s', (_, layer) => {
  expect(days(`${layer}\nlayer above { colour white }`).at(-1)).toBe('above 2027-01-11');
});

test('what was painted has been painted: from there on the days are known again', () => {
  const painted = days(`underlayer a { colour whitte }
layer b { colour white   film 30 µm   painted 2027-02-01 }
layer c { colour white }`);
  expect(painted[1]).toBe('b 7:23');
  expect(painted[2]).toMatch(/^c 2027-0[2-9]/);
});

test('later coats of the layer itself are not known either', () => {
  expect(days('layer a { colour whitte   coats 2 }')).toEqual(['a 2027-01-11', 'a 7:18']);
});

const { plan, study, findings } = read(MISSPELT);
const found = findings();
const line = (f: Finding) => (f.rule === 'unknown-name' ? '7:36' : '');
const NOTICE = noticeOf(found, line)!;
const report = buildReport(study, found, line);

test('no form of the plan shows a date for what is not known', () => {
  const page = htmlReport(report);
  const { text } = markdownReport(report, 'trial');
  for (const form of [
    page,
    text,
    diaryText(study),
    lenses(plan, study)
      .map((l) => l.text)
      .join('\n'),
  ])
    expect(form).toContain('not known, see 7:36');
  const json = studyJson(study, 'p.paintplan', []).calendar.find((e) => e.layer === 'last')!;
  expect(json).toMatchObject({
    notBefore: null,
    safeFrom: null,
    notBeforeDay: null,
    likelyDay: null,
    safeFromDay: null,
    notKnown: { layer: 'first', line: 7, column: 36 },
    heldBy: { layer: 'first', area: 'sky' },
  });
  const calendar = calendarIcs(study, NOTICE);
  expect([...calendar.matchAll(/^SUMMARY:(.*)\r$/gm)].map((m) => m[1])).toEqual(['first', 'third']);
});

test('every report of a plan with errors says so at its top', () => {
  expect(NOTICE).toMatch(/^There is an error in this text \(7:36\)/);
  const head = (text: string, chars: number) => text.slice(0, chars);
  expect(htmlReport(report).split('<nav')[0]).toContain('There is an error in this text');
  expect(head(markdownReport(report, 'trial').text, 300)).toContain('There is an error in this text');
  expect(head(calendarIcs(study, NOTICE).replaceAll('\r\n ', ''), 500)).toContain(
    'There is an error in this text',
  );
  expect(materialsCsv(study, NOTICE).split('\r\n')[1]).toContain('There is an error in this text');
  expect(sectionDrawing(study, 's', NOTICE)!.markup).toContain('>There is an error in this text');
  const sound = read('layer a { colour white }');
  expect(buildReport(sound.study, sound.findings(), line).notice).toBeUndefined();
});
