import { describe, expect, test } from 'vitest';
import { differences, mean } from '../../language/build/optics/evaluate.ts';
import { readFilms } from '../../language/build/optics/films.ts';
import { fitOwn } from '../../language/build/optics/fit.ts';
import judged from '../../language/build/optics/judged.json' with { type: 'json' };
import { PAINTS, pigmentShare } from '../../language/build/optics/paints.ts';
import { toSample } from '../../language/build/optics/samples.ts';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import { opticalData, pigmentsWithData } from '../../language/src/optics/data.ts';
import { BANDS } from '../../language/src/optics/wavelengths.ts';
import { text } from './files.ts';

describe('the shipped table', () => {
  test('holds every pigment of the catalogue, well over 60', () => {
    expect(pigmentsWithData().length).toBeGreaterThanOrEqual(60);
    expect(
      allPigments()
        .map((p) => p.id)
        .filter((id) => !opticalData(id)),
    ).toEqual([]);
  });
  test.each(pigmentsWithData().map((id) => [id]))(
    '%s: absorption and scattering in every band, class, residual and basis',
    (id) => {
      const data = opticalData(id)!;
      for (const v of [...data.a, ...data.s]) expect(v > 0 && v < 100).toBe(true);
      expect([data.a.length, data.s.length]).toEqual([BANDS, BANDS]);
      expect(['A', 'B', 'C', 'D']).toContain(data.confidence);
      expect(data.residual).toBeGreaterThan(0);
      expect(data.basis.length).toBeGreaterThan(30);
      expect(opticalData(id)).toBe(data);
    },
  );
  test('an unknown pigment has none', () => expect(opticalData('PZ99')).toBeUndefined());
});

describe('the shipped table against the measured films (CC0; Geldof et al. 2018)', () => {
  const shipped = PAINTS.map((p) => ({ share: pigmentShare(p), data: p.id ? opticalData(p.id) : undefined }));
  // In the table's µm; a film of thickness 1 in the fit's unit is so many of them.
  const MICRON = judged.microns;
  const ln = (pick: 'a' | 's') =>
    shipped.map(({ share, data }) =>
      Float64Array.from({ length: BANDS }, (_, b) =>
        Math.log((data ? data[pick][b]! : 0.01) * share * MICRON),
      ),
    );
  const coefficients = { lnA: ln('a'), lnS: ln('s') };
  const samples = readFilms(text('oil-films.csv'))
    .filter((f) => [...f.mass.keys()].every((n) => PAINTS.some((p) => p.name === n && p.id)))
    .map(toSample);

  test('it describes them, thickness and gloss read from each, within ΔE00 1.5 in the mean', () => {
    expect(samples.length).toBeGreaterThan(45);
    const off = samples.flatMap((s) => {
      const own = fitOwn(s, coefficients);
      return differences(s, coefficients, own.x, own.m);
    });
    expect(mean(off)).toBeLessThan(1.5);
  });
});
