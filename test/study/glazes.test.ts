/** The shipped optical data seen through the study: what a painter expects of a glaze (common practice), loosely. */
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { study } from '../../language/src/study/build.ts';

const after = (layers: string) => {
  const text = `plan "x"
paint viridian = PG18 in linseed
paint ultramarine = PB29 in linseed
paint white = PW6 in linseed
medium rich = 20 % turpentine + 20 % alkyd + 60 % walnut
layer grey { colour #727272 film 25 µm }
${layers}
`;
  return study(readPlan(text, 'file:///x.paintplan')).areas[0]!.buildUp().at(-1)!.colour;
};

describe('over a grey of L* 48, a film of 8 µm, two thirds medium', () => {
  it('viridian darkens it and turns it well to green (the design’s trial: L* 36, a* −23)', () => {
    const { lab } = after('glaze g { colour viridian medium 67 % rich film 8 µm }');
    expect(lab[0]).toBeLessThan(42);
    expect(lab[0]).toBeGreaterThan(24);
    expect(lab[1]).toBeLessThan(-15);
  });
  it('ultramarine turns it to a deep blue (the design’s trial: L* 25, b* −38)', () => {
    const { lab } = after('glaze g { colour ultramarine medium 67 % rich film 8 µm }');
    expect(lab[0]).toBeLessThan(35);
    expect(lab[2]).toBeLessThan(-25);
  });
  it('white in it lightens it and takes its depth', () => {
    const glaze = after('glaze g { colour ultramarine medium 67 % rich film 8 µm }');
    const milky = after('glaze g { colour 1 ultramarine + 1 white medium 67 % rich film 8 µm }');
    expect(milky.lab[0]).toBeGreaterThan(glaze.lab[0] + 10);
  });
  it('a scumble of white lightens the dark beneath without hiding it', () => {
    const { lab } = after('scumble s { colour white film 5 µm medium 30 % rich }');
    expect(lab[0]).toBeGreaterThan(55);
    expect(lab[0]).toBeLessThan(95);
  });
});

describe('a pigment of the painter’s own', () => {
  const text = (swatches: string) => `plan "x"
pigment my-blue like PB29 {
${swatches}
}
paint blue = my-blue in linseed
layer grey { colour #727272 film 25 µm }
layer body { colour 1 blue + 1 PW6 film 100 µm }
`;
  const of = (swatches: string) => study(readPlan(text(swatches), 'file:///x.paintplan'));
  const colour = (swatches: string) => of(swatches).layers[1]!.colours()[0]!;

  it('is the catalogue’s until it is measured', () => {
    const plain = colour('  lightfast I');
    const same = after('layer body { colour 1 ultramarine + 1 PW6 film 100 µm }');
    for (const i of [0, 1, 2] as const) expect(plain.lab[i]).toBeCloseTo(same.lab[i], 6);
  });

  it('moves towards its swatches, and the study tells by how much', () => {
    const swatches = '  masstone #0c0862\n  tint 1:10 PW6 #a5bcea';
    const result = of(swatches);
    const { swatches: told, data, inconsistent } = result.calibration(result.plan.pigments[0]!);
    expect(inconsistent).toBeUndefined();
    expect(told.map((s) => s.kind)).toEqual(['masstone', 'tint']);
    for (const s of told) expect(s.after!).toBeLessThan(Math.max(2, s.before!));
    expect(data!.basis).toContain('own swatches');
    expect(colour(swatches).basis.join()).toContain('my-blue');
    expect(colour(swatches).lab).not.toEqual(colour('  lightfast I').lab);
  });

  it('keeps the catalogue’s data where its swatches contradict each other', () => {
    const result = of('  masstone #a5bcea\n  tint 1:10 PW6 #0c0862');
    expect(result.calibration(result.plan.pigments[0]!).inconsistent).toContain('tint');
    expect(result.layers[1]!.colours()[0]!.lab).toEqual(colour('  lightfast I').lab);
  });
});
