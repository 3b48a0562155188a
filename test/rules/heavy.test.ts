/** Texts nobody would write and somebody will open: what they say is still found. The time of a test guards against hanging only. */
import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { chainedMixes } from '../bench/texts.ts';

const uri = 'file:///heavy.paintplan';
const said = (text: string) => createAnalyser()(text, uri).findings({ colour: false, strict: true });

const poisons = (text: string) =>
  said(text)
    .filter((f) => f.rule === 'toxic-pigment')
    .map((f) => f.message.split(' (')[0]);

describe('mixes of mixes', () => {
  test('lead white is found beneath twenty thousand of them', () => {
    expect(poisons(chainedMixes(20_000).replace('PW6', 'PW1'))).toContain('‘PW1’');
  });

  test('and in circles of them, wherever one begins', () => {
    for (const last of ['a', 'b', 'c'])
      expect(
        poisons(
          `plan "x"\npaint lead = PW1 in linseed\nmix a = 1 b + 1 lead\nmix b = 1 c + 1 PB29\nmix c = 1 a + 1 PR106\nlayer one { colour ${last} }\n`,
        ).sort(),
      ).toEqual(['‘PR106’', '‘PW1’']);
  });

  test('what rests on an impossible figure beneath them is still left out', () => {
    const text = chainedMixes(20_000).replace('PW6 in linseed', 'PW6 in linseed 300 % oil');
    expect(said(text).map((f) => f.rule)).toContain('out-of-range');
  });
});
