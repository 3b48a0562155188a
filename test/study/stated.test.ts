/** Colours that a painter states: what is stated is what is seen. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { fromLabToXyz, type Lab } from '../../language/src/optics/cie.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import { coloursPart } from '../../language/src/report/parts.ts';

const studied = (text: string) => createAnalyser()(`plan "x"\n${text}`, 'file:///x.paintplan').study;
const seen = (text: string): Lab => studied(text).areas[0]!.buildUp().at(-1)!.colour.lab;
const GEOMETRIES = ['', 'studio { specular included }\n', 'studio { specular excluded }\n'];
/** As a plan may write CIELAB under D65: `lab()` itself is for D50 in CSS. */
const css = (lab: Lab) =>
  `color(xyz-d65 ${fromLabToXyz(lab)
    .map((v) => v.toFixed(5))
    .join(' ')})`;
const whole = (lab: Lab): Lab => [Math.round(lab[0]), Math.round(lab[1]), Math.round(lab[2])];

describe('a stated surface reads back as stated', () => {
  it.each(GEOMETRIES)('a dark grey, %s', (studio) => {
    expect(seen(`${studio}ground g { colour lab(12 0 0) }`)[0]).toBeCloseTo(12, 1);
  });
  it('any colour of sRGB, whatever the geometry', () => {
    const byte = fc.integer({ min: 0, max: 255 });
    fc.assert(
      fc.property(byte, byte, byte, fc.constantFrom(...GEOMETRIES), (r, g, b, studio) => {
        const colour = `rgb(${r} ${g} ${b})`;
        const stated = seen(`studio { specular excluded }\nground g { colour ${colour} }`);
        // 0.8 at the most in 3,000 colours: at the edge of sRGB, cyan above all, no smooth reflectance is that pure
        expect(deltaE00(seen(`${studio}ground g { colour ${colour} }`), stated)).toBeLessThan(1);
      }),
      { numRuns: 100, seed: 6 },
    );
  });
});

describe('swatches that are as the program predicts them change hardly anything', () => {
  const GLAZE =
    'layer grey { colour #727272 film 25 µm }\nglaze g { colour p medium 67 % rich film 8 µm }\nlayer body { on body colour 1 p + 4 PW6 film 100 µm }';
  const own = (studio: string, like: string, swatch: string) => `${studio}pigment mine like ${like} {
  ${swatch}
}
paint p = mine in linseed
medium rich = 20 % turpentine + 20 % alkyd + 60 % walnut
area whole 50 %
area body 50 %
`;
  const pigments = ['PB29', 'PR108', 'PBk9', 'PG18', 'PR177', 'PY42'];
  // lightfast says nothing of colour, so that the block is not empty
  const NONE = 'lightfast I';
  for (const studio of GEOMETRIES)
    it.each(pigments)(`%s ${studio}`, (like) => {
      const bare = (layers: string) => seen(own(studio, like, NONE) + layers);
      const masstone = bare('layer a { colour p film 800 µm }');
      const white = bare('layer w { colour lab(94 0 3) film 30 µm }\nlayer a { colour p film 18 µm }');
      const plain = studied(own(studio, like, NONE) + GLAZE);
      for (const swatch of [
        `masstone ${css(whole(masstone))}`,
        `over-white ${css(whole(white))} at 18 µm`,
        `masstone ${css(whole(masstone))}\n  over-white ${css(whole(white))} at 18 µm`,
      ]) {
        const with_ = studied(own(studio, like, swatch) + GLAZE);
        expect(with_.calibration(with_.plan.pigments[0]!).inconsistent).toBeUndefined();
        for (const [i, area] of plain.areas.entries()) {
          const [before, after] = [area, with_.areas[i]!].map((a) => a.buildUp().at(-1)!.colour.lab);
          // figures are written without decimals, which alone is worth about one ΔE00 in the darks
          expect(deltaE00(before!, after!), `${swatch} on ${area.name}`).toBeLessThan(3);
        }
      }
    });
});

describe('the report says under which light', () => {
  const words = (studio: string) =>
    JSON.stringify(coloursPart(studied(`${studio}ground g { colour #808080 }`)));
  it('D65 where nothing is said, else the light of the plan', () => {
    expect(words('')).toContain('CIELAB under D65');
    expect(words('studio { light-source A }\n')).toContain('Seen under illuminant A');
    expect(words('studio { light-source D50 }\n')).toContain('Seen under illuminant D50');
  });
});
