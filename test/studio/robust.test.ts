/** Bad input: whatever the text, the studio's results come back, finite and in order. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { harmingPairs } from '../../language/src/permanence/pairs.ts';
import { diaryText } from '../../language/src/studio/diary-text.ts';
import { materialsCsv } from '../../language/src/studio/quantities.ts';
import { sampleConflicts, sampleSequence, thicknessOutside } from '../../language/src/studio/samples.ts';
import { calendarIcs } from '../../language/src/study/calendar-ics.ts';
import { tries } from '../long.ts';
import { studied } from '../plan/text.ts';

/** Walks everything that is told; intervals must be finite and ordered. */
function sound(value: unknown, path = ''): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  if (typeof value !== 'object' || value === null) return;
  const { low, likely, high } = value as Record<string, unknown>;
  if (typeof low === 'number' && typeof likely === 'number' && typeof high === 'number') {
    expect(low, path).toBeLessThanOrEqual(likely);
    expect(likely, path).toBeLessThanOrEqual(high);
  }
  for (const [key, inner] of Object.entries(value)) sound(inner, `${path}.${key}`);
}

function everything(text: string): string {
  const study = studied(text);
  const { quantities, air, cautions } = study;
  sound({ quantities, air, cautions, years: study.permanence.map((p) => p.years) });
  const pairs = harmingPairs(study).length;
  const samples = [sampleConflicts(study.plan), sampleSequence(study.plan), thicknessOutside(study.plan)];
  const printed = [
    materialsCsv(study),
    diaryText(study),
    calendarIcs(study),
    JSON.stringify(samples),
    pairs,
  ].join('\n');
  expect(printed).not.toMatch(/NaN|Infinity|undefined|\[object/);
  return printed;
}

const examples = new URL('../../examples/', import.meta.url);
const files = readdirSync(examples, { recursive: true, encoding: 'utf8' })
  .filter((f) => f.endsWith('.paintplan'))
  .sort();

test.each(files)('%s, cut anywhere', (file) => {
  const text = readFileSync(new URL(file, examples), 'utf8');
  for (let end = 0; end <= text.length; end += tries(183, 61)) everything(text.slice(0, end));
  for (let start = 0; start < text.length; start += tries(291, 97)) everything(text.slice(start));
});

const HEAD =
  'plan "Made up"\nstart 2027-01-11\npaint white = PW6 in linseed\nmedium thin = 50 % turpentine + 50 % linseed\n';
const LAYER = 'glaze g { prepare wipe with turpentine colour white medium 50 % thin film 10 µm }\n';

describe('bad input', () => {
  test.each([
    [
      'a room of nothing',
      `${HEAD}studio { room 0 m³ session 0 hours air-changes 0 per hour }\nsupport linen 5 x 5 cm\n${LAYER}`,
    ],
    ['a room of less', `${HEAD}studio { room -5 m³ session -1 hours }\nsupport linen 5 x 5 cm\n${LAYER}`],
    ['a support of nothing', `${HEAD}support linen 0 x 0 cm\n${LAYER}`],
    ['a support the size of a country', `${HEAD}support linen 1e9 x 999999999999 cm\n${LAYER}`],
    ['ten thousand coats', `${HEAD}support linen 5 x 5 cm\nlayer a { colour white coats 10000 }`],
    [
      'no coat',
      `${HEAD}support linen 5 x 5 cm\nlayer a { colour white coats 0 }\nvarnish v { resin damar coats 0 }`,
    ],
    [
      'areas of 300 %',
      `${HEAD}support linen 5 x 5 cm\narea a 150 %\narea b 150 %\nlayer l { on a, b colour white }`,
    ],
    ['impossible dates', `${HEAD.replace('2027-01-11', '2027-02-30')}support linen 5 x 5 cm\n${LAYER}`],
    [
      'the end of the calendar',
      `${HEAD.replace('2027', '9999')}support linen 5 x 5 cm\nlayer a { colour white wait 9999 years }\nlayer b { colour white }`,
    ],
    ['a film of nothing', `${HEAD}support linen 5 x 5 cm\nlayer a { colour white film 0 µm }`],
    [
      'a medium of spirit alone',
      `${HEAD}support linen 5 x 5 cm\nlayer a { medium 100 % turpentine film 10 µm }\nlayer b { colour white medium 100 % turpentine film 10 µm }`,
    ],
    [
      'no names known',
      `${HEAD}support nothing 5 x 5 cm\nlayer a { prepare wipe with nothing colour nothing medium 20 % nothing }`,
    ],
  ])('%s', (_, text) => {
    everything(text);
  });

  test('samples in a circle are told and end', () => {
    const layers = 'layer low { colour PW6 film 20 µm }\nlayer high { colour PW6 film 20 µm }\n';
    const text = `record "Old"\n${layers}sample S1 { low 20 µm high 20 µm }\nsample S2 { high 20 µm low 90 µm }`;
    const { plan } = studied(text);
    expect(sampleConflicts(plan).map((c) => c.chain)).toEqual([['high', 'low', 'high']]);
    expect(thicknessOutside(plan).map((t) => `${t.sample} ${t.layer} ${t.side}`)).toEqual(['S2 low thicker']);
    everything(text);
  });
});
