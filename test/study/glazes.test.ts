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
