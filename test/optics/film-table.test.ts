/** The table that matching reads, against the light it stands for. */
import { expect, test } from 'vitest';
import { filmTable } from '../../language/src/optics/film-table.ts';
import { filmOn, lambert } from '../../language/src/optics/transport.ts';
import { flat } from '../../language/src/optics/wavelengths.ts';
import { seeded } from './exhaustive.ts';

test('mixtures of paints from clear to hiding: within 0.0005 of reflectance, slopes within a fiftieth', () => {
  const random = seeded(21);
  let worst = 0;
  for (let trial = 0; trial < 40; trial++) {
    const below = lambert(flat(random()));
    const paints = Array.from(
      { length: 6 },
      () => [10 ** (-4 + 5 * random()), 10 ** (-3 + 4 * random())] as const,
    );
    const table = filmTable(
      paints.map(([a]) => a),
      paints.map(([, s]) => s),
      below,
      0,
    );
    for (let i = 0; i < 100; i++) {
      const shares = paints.map(() => random() ** 4);
      const whole = shares.reduce((sum, v) => sum + v, 0);
      const [a, s] = [0, 1].map((k) =>
        paints.reduce((sum, p, j) => sum + (p[k]! * shares[j]!) / whole, 0),
      ) as [number, number];
      worst = Math.max(worst, Math.abs(table.read(a, s, true) - filmOn(a, s, below, 0)));
      const slope = (filmOn(a * 1.001, s, below, 0) - filmOn(a * 0.999, s, below, 0)) / (0.002 * a);
      expect(Math.abs(table.byA - slope) * a).toBeLessThan(0.02);
    }
  }
  expect(worst).toBeLessThan(5e-4);
});
