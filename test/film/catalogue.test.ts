/** Fatness over the whole catalogue: what a painter would call equally stiff must look equally lean, umber or lead. */
import { describe, expect, it } from 'vitest';
import { compose } from '../../language/src/film/compose.ts';
import type { FilmInput, LiquidPart } from '../../language/src/film/input.ts';
import { allPigments, binder, solvent } from '../../language/src/materials/catalogue.ts';
import { exactly } from '../../language/src/materials/interval.ts';
import { usualPaste } from '../../language/src/materials/pastes.ts';
import type { Pigment } from '../../language/src/materials/types.ts';

const oil = (id: string, volume: number): LiquidPart => ({
  liquid: { kind: 'binder', binder: binder(id)! },
  volume,
});
const thin = (id: string, volume: number): LiquidPart => ({
  liquid: { kind: 'solvent', solvent: solvent(id)! },
  volume,
});
const film = (pigment: Pigment, share: number, parts: readonly LiquidPart[]): FilmInput => ({
  pastes: [
    { paste: { name: pigment.id, pigments: [{ pigment, mass: 1 }], binder: binder('linseed')! }, volume: 1 },
  ],
  medium: parts.length > 0 ? { name: 'm', parts } : undefined,
  mediumShare: exactly(share),
  dryFilm: exactly(10),
  solvent,
});
const likely = (pigment: Pigment, share = 0, parts: readonly LiquidPart[] = []) =>
  compose(film(pigment, share, parts))!.fatness.likely;

/** Fatness of a paste, least and most: what handbooks' pastes leave over the oil absorption (test/film/pastes.test.ts). */
const PASTE: Readonly<Record<string, readonly [number, number]>> = {
  usual: [0.05, 0.25],
  'cadmiums, vermilion, lead chromates and antimonate': [0.15, 0.3],
  'alizarin lakes': [0.3, 0.5],
  'other fine organic pigments': [0.3, 0.5],
  'copper phthalocyanines': [0.55, 0.7],
};

describe.each(allPigments().map((p) => [p.id, p] as const))('%s', (_, pigment) => {
  const family = pigment.paste === usualPaste ? 'usual' : pigment.paste!.family;
  it('is lean as a stiff paste and fat as a rich glaze (design figures: near 0.2 and 0.6)', () => {
    const paste = likely(pigment);
    const [least, most] = PASTE[family] ?? [0, 0];
    expect(paste).toBeGreaterThan(least);
    expect(paste).toBeLessThan(most);
    const glaze = likely(pigment, 0.6, [thin('turpentine', 20), oil('alkyd', 20), oil('walnut', 60)]);
    expect(glaze).toBeGreaterThan(Math.max(0.5, paste));
    expect(glaze).toBeLessThan(family === 'usual' ? 0.75 : 0.9);
  });

  it('is fatter with a quarter spirit, a quarter alkyd, half safflower than with half spirit, half linseed (common practice)', () => {
    const lower = likely(pigment, 0.4, [thin('turpentine', 50), oil('linseed', 50)]);
    const upper = likely(pigment, 0.4, [thin('turpentine', 25), oil('alkyd', 25), oil('safflower', 50)]);
    expect(upper).toBeGreaterThan(lower);
  });
});
