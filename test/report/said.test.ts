/** What a report says in words and drawings: amounts, times, dashes, the layer a match lies on. */
import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { REACH } from '../../language/src/drying/settings.ts';
import { amount, time } from '../../language/src/features/figures.ts';
import { layerOfMix, propose } from '../../language/src/features/propose.ts';
import { exactly } from '../../language/src/materials/interval.ts';
import { dryingPart, quantitiesPart } from '../../language/src/report/parts.ts';
import { sectionDrawing } from '../../language/src/report/section.ts';
import { spectraDrawing } from '../../language/src/report/spectra.ts';
import { diary } from '../../language/src/studio/diary.ts';
import { TEN_YEARS, timeWords } from '../../language/src/studio/words.ts';

const studied = (text: string) => createAnalyser()(text, 'file:///a.paintplan').study;
const range = (low: number, likely: number, high: number) => ({ low, likely, high });

describe('amounts', () => {
  test('of what nobody can measure out have no figures', () => {
    expect(amount(range(0.0005, 0.0017, 0.004), 'ml')).toBe('under 0.1 ml');
    expect(amount(range(0.01, 0.05, 0.2), 'g')).toBe('up to 0.2 g');
  });
  test('from a thousand up are litres and kilograms', () => {
    expect(amount(range(1600, 2500, 4700), 'ml')).toBe('2.5 l (1.6–4.7)');
    expect(amount(exactly(3200), 'g')).toBe('3.2 kg');
  });
  test('between are as they were', () => {
    expect(amount(range(2, 3, 4), 'ml')).toBe('3 ml (2–4)');
    expect(amount(exactly(0), 'ml')).toBe('0 ml');
  });
});

describe('the diary', () => {
  test('tells parts first, then one amount that can be laid out', () => {
    const study = studied(`plan "x"
support linen 6 x 6 cm
paint w = PW6 in linseed
paint k = PBk9 in linseed
layer a { colour 3 w + 1 k film 10 µm }`);
    expect(diary(study)[0]!.steps[0]).toBe('Mix 3 w : 1 k, about 0.05 ml (a lentil).');
  });
});

describe('times', () => {
  test('beyond ten years are not told', () => {
    expect(time(range(42, 400, 254_000))).toBe('13.1 months (1.4 to over 10 years)');
    expect(REACH).toBe(TEN_YEARS);
    expect(time(range(4000, 5000, 6000))).toBe('not within 10 years');
    expect(timeWords(range(10, 5000, 254_000))).toBe('over 10 years (from 10 days)');
  });
  test('an impasto of lead white is firm within years that a reader can believe', () => {
    const study = studied('plan "x"\npaint w = PW1 in linseed\nlayer a { colour w film impasto }');
    expect(JSON.stringify(dryingPart(study))).toMatch(/to over 10 years/);
  });
});

describe('the list of materials', () => {
  const rows = (text: string) => {
    const table = quantitiesPart(studied(text))!.blocks.findLast((b) => b.kind === 'table')!;
    return table.kind === 'table' ? table.rows : [];
  };
  test('names a medium of one liquid once', () => {
    const head = 'plan "x"\nsupport linen 50 x 40 cm\npaint w = PW6 in linseed\n';
    const plain = rows(`${head}layer a { colour w medium 30 % odourless-spirit film 20 µm }`);
    expect(
      plain
        .filter(([name]) => String(name).includes('odourless-spirit') && name !== 'w')
        .filter(([, as]) => String(as).includes('medium') || String(as).startsWith('in ')),
    ).toHaveLength(1);
    const mixed = rows(`${head}medium thin = 50 % turpentine + 50 % linseed
layer a { colour w medium 30 % thin film 20 µm }`);
    expect(mixed.map(([name]) => name)).toEqual(
      expect.arrayContaining(['thin', '– turpentine', '– linseed']),
    );
  });
});

const dashes = (shapes: readonly string[] | null) =>
  (shapes ?? []).map((shape) => /stroke-dasharray="([^"]*)"/.exec(shape)?.[1] ?? 'solid');

describe('drawings', () => {
  test('a film nobody knows is dashed in the section', () => {
    const of = (film: string) => {
      const drawing = sectionDrawing(studied(`record "x"\nlayer a { colour PW6 film ${film} }`))!.markup;
      return dashes(drawing.match(/<rect[^>]*data-layer[^>]*>/g));
    };
    expect(of('unknown')).toEqual(['4 3']);
    expect(of('20 µm')).toEqual(['solid']);
  });
  test('twenty areas have twenty different lines in the chart of reflectance', () => {
    const areas = Array.from({ length: 20 }, (_, i) => `area a${i} 5 %`).join('\n');
    const drawing = spectraDrawing(studied(`plan "x"\n${areas}\nlayer l { colour PW6 film 40 µm }`))!.markup;
    const lines = dashes(drawing.match(/<polyline[^>]*>/g));
    expect(lines).toHaveLength(20);
    expect(new Set(lines).size).toBe(20);
  });
});

describe('a match', () => {
  test('says which layer it lies on', () => {
    // two layers on areas of their own: what was written last lies beneath neither
    const { study, plan } = createAnalyser()(
      `plan "x"
area left 50 %
area right 50 %
paint w = PW6 in linseed
paint k = PBk9 in linseed
mix grey = 4 w + 1 k target #8b918c
layer low { on left colour w film 40 µm }
layer other { on right colour k film 40 µm }
layer top { on left colour grey film 20 µm }`,
      'file:///a.paintplan',
    );
    const layer = layerOfMix(plan, 'grey')!;
    expect(propose(study, { target: [60, -3, 2], layer, area: 'left' })!.film).toContain('on left, over low');
  });
});
