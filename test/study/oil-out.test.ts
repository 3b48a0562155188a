/** What stays of an oiling out: 1 µm (from memory), counted by hand through film, drying, amounts and colour. */
import { describe, expect, test } from 'vitest';
import { RESIDUE } from '../../language/src/film/residue.ts';
import { materialsCsv } from '../../language/src/studio/quantities.ts';
import { PREPARATION } from '../../language/src/studio/settings.ts';
import { studied } from '../plan/text.ts';

const glazed = (prepare: string, more = '') =>
  studied(`plan "Made up"
support linen 50 x 40 cm
paint white = PW6 in linseed
paint umber = PBr7 burnt-umber in linseed
medium rich = 50 % turpentine + 50 % stand-oil
ground priming { material acrylic }
layer body { colour white   film 20 µm }
glaze warm { ${prepare}   colour umber   medium 60 % linseed   film 8 µm   ${more} }`);
const warm = (prepare: string, more = '') => glazed(prepare, more).layers[2]!;

describe('what stays of an oiling out', () => {
  const bare = warm('prepare abrade');
  const oiled = warm('prepare oil-out with walnut');

  test('makes the coat thicker and fatter by its volume', () => {
    expect(oiled.composition!.residue.likely).toBeCloseTo(RESIDUE.likely, 9);
    expect(oiled.dryFilm!.likely).toBeCloseTo(9, 9);
    expect(oiled.composition!.pvc.likely).toBeCloseTo((bare.composition!.pvc.likely * 8) / 9, 9);
    expect(1 - oiled.composition!.fatness.likely).toBeCloseTo(
      ((1 - bare.composition!.fatness.likely) * 8) / 9,
      9,
    );
    const walnut = oiled.composition!.binders.find((b) => b.binder === 'walnut')!;
    expect(walnut.volumeFraction.likely).toBeCloseTo(1 / 9, 9);
    // how well it was wiped off is told as a range
    expect(oiled.composition!.fatness.high).toBeGreaterThan(bare.composition!.fatness.high);
  });
  test('counts before every coat, and twice where it is done twice', () => {
    expect(warm('prepare oil-out with walnut', 'coats 3').dryFilm!.likely).toBeCloseTo(27, 9);
    expect(
      warm('prepare oil-out with walnut   prepare oil-out with walnut').composition!.residue.likely,
    ).toBeCloseTo(2, 9);
  });
  test('is what does not evaporate: half of a medium half of spirit, nothing of spirit or water', () => {
    for (const method of ['oil-out', 'wipe'])
      expect(warm(`prepare ${method} with rich`).composition!.residue.likely).toBeCloseTo(0.5, 9);
    for (const nothing of [
      'prepare wipe',
      'prepare wipe with turpentine',
      'prepare wash',
      'prepare abrade with pumice',
    ])
      expect(warm(nothing).composition!.residue.high).toBe(0);
    expect(warm('prepare oil-out').composition!.binders.map((b) => b.binder)).toContain('oil');
  });
  test('dries with the coat, as its oil does', () => {
    const poppy = warm('prepare oil-out with poppy').drying!.touchDry;
    expect(poppy.likely).toBeGreaterThan(bare.drying!.touchDry.likely);
    expect(oiled.assumptions.find((a) => a.field === 'prepare')?.value).toBe(
      'about 1 µm (0.3 to 3) of walnut stays',
    );
  });
  test('has no colour and takes no more paint', () => {
    expect(oiled.composition!.wetFilm).toEqual(bare.composition!.wetFilm);
    const [one, other] = [oiled, bare].map((l) => l.colours()[0]!);
    for (const i of [0, 1, 2]) expect(one!.lab[i]).toBeCloseTo(other!.lab[i]!, 6);
    expect(one!.radius).toBeCloseTo(other!.radius, 6);
  });
  test('is told apart from what is poured', () => {
    const study = glazed('prepare oil-out with rich', 'coats 2');
    const [poured] = study.quantities!.agents.filter((a) => a.method === 'oil-out');
    expect(poured!.ml!.likely).toBeCloseTo(0.2 * PREPARATION['oil-out'].likely * 2, 9);
    expect(poured!.stays!.likely).toBeCloseTo(0.2 * 1 * 0.5 * 2, 9);
    expect(materialsCsv(study)).toMatch(/\r\nstays,rich,oil-out,0.06,0.2,0.6,/);
    expect(glazed('prepare wipe with turpentine').quantities!.agents[0]!.stays).toBeUndefined();
  });
});
