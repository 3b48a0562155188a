/** Pigments that look alike in general use, against what the trade takes for one another (common practice). */
import { expect, test } from 'vitest';
import { alike } from '../../language/src/features/alike.ts';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import { isPoisonous, lasts } from '../../language/src/rules/shared/instead.ts';
import { isSold } from '../../language/src/study/stand-in.ts';

const pigment = (id: string) => allPigments().find((p) => p.id === id)!;
const ids = (id: string) => alike(pigment(id)).map((a) => a.pigment.id);

test('what painters take for alizarin, Prussian blue and lead white is among the nearest (common practice)', () => {
  expect(ids('PR83')).toContain('PR177');
  expect(ids('PB27').every((id) => id.startsWith('PB15'))).toBe(true);
  expect(ids('PW1').join()).toMatch(/^PW6/);
});

test('nothing fades for what fades, nothing is poison for poison, all can be bought, the nearest first', () => {
  for (const id of ['PR83', 'PW1', 'PY35', 'PR106', 'NR9', 'PB29', 'PG18']) {
    const found = alike(pigment(id), 5);
    const off = found.map((a) => Math.hypot(a.thick, a.inWhite, a.glaze));
    expect(off).toEqual([...off].sort((a, b) => a - b));
    expect(new Set(found.map((a) => a.pigment.code)).size).toBe(found.length);
    for (const { pigment: p } of found) {
      expect(isSold(p)).toBe(true);
      if (!lasts(pigment(id))) expect(lasts(p), p.id).toBe(true);
      if (isPoisonous(pigment(id))) expect(isPoisonous(p), p.id).toBe(false);
    }
  }
});
