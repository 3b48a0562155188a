/** The facts of `facts.ts`, computed from the shipped table as a painter would make the film. */
import { expect, test } from 'vitest';
import type { Lab } from '../../language/src/optics/cie.ts';
import { sentBack } from '../../language/src/optics/transport.ts';
import { FACTS, type Fact, type Range, type Shown } from './facts.ts';
import { BLACK, chroma, film, hue, lab, type Share, THICK, thinned, tint, tube, WHITE } from './paints.ts';

const look = (id: string, as: Shown): Lab => {
  if (as === 'masstone') return lab(film(thinned(id), THICK, WHITE));
  // A tenth of paint in medium, as thin as a glaze is rubbed.
  if (as === 'glaze') return lab(film(thinned(id, 0.1), 5, WHITE));
  return lab(film(tint(id, as), THICK, WHITE));
};

/** The tint in titanium white that has this L*, found by halving. */
function tintOfLightness(id: string, lightness: number): Lab {
  let [little, much] = [Math.log(1e-3), Math.log(1e5)];
  for (let i = 0; i < 40; i++) {
    const white = (little + much) / 2;
    if (lab(film(tint(id, Math.exp(white)), THICK, WHITE))[0] < lightness) little = white;
    else much = white;
  }
  const found = lab(film(tint(id, Math.exp(much)), THICK, WHITE));
  expect(Math.abs(found[0] - lightness), `${id} has no tint of L* ${lightness}`).toBeLessThan(0.1);
  return found;
}

/**
 * What the pigment adds to (1 − R)²/2R of titanium white where it adds most, one part in a hundred (ASTM D4838,
 * absorption tinting strength), R inside the paint.
 */
function strength(id: string): number {
  const ratios = (shares: readonly Share[]) =>
    sentBack(film(shares, THICK, BLACK)).map((r) => ((1 - r) * (1 - r)) / (2 * r));
  const white = ratios([['PW6', tube('PW6')]]);
  return Math.max(...ratios(tint(id, 100)).map((r, b) => r - white[b]!));
}

const turn = (to: number, from: number): number => ((to - from + 540) % 360) - 180;

/** L* of one part of ivory black in ten of a white. */
const greyed = (white: string): number =>
  lab(
    film(
      [
        ['PBk9', tube('PBk9') / 11],
        [white, (10 * tube(white)) / 11],
      ],
      THICK,
      WHITE,
    ),
  )[0];

const luminance = (l: number): number => (l > 8 ? ((l + 16) / 116) ** 3 : l / 903.3);
const contrastRatio = (id: string): number => {
  const over = (ground: typeof BLACK) => luminance(lab(film(thinned(id), 25, ground))[0]);
  return over(BLACK) / over(WHITE);
};

const words = (fact: Fact): string => {
  if ('of' in fact) return `${fact.of}, ${typeof fact.as === 'number' ? `1:${fact.as} in white` : fact.as}`;
  if ('stronger' in fact) return `${fact.stronger[0]} is stronger than ${fact.stronger[1]}`;
  if ('cleaner' in fact) return `${fact.cleaner[0]} is cleaner than ${fact.cleaner[1]}`;
  if ('hueOf' in fact) return `${fact.hueOf[0]} is ${fact.word} than ${fact.hueOf[1]}`;
  if ('whiter' in fact) return `${fact.whiter[0]} lightens more than ${fact.whiter[1]}`;
  return `${fact.hidesMore[0]} hides more than ${fact.hidesMore[1]}`;
};

function check(fact: Fact): void {
  const within = (what: string, value: number, [least, most]: Range) => {
    expect(value, what).toBeGreaterThanOrEqual(least);
    expect(value, what).toBeLessThanOrEqual(most);
  };
  if ('of' in fact) {
    const seen = look(fact.of, fact.as);
    const said = `L* ${seen[0].toFixed(1)} C* ${chroma(seen).toFixed(1)} h ${hue(seen).toFixed(0)}`;
    if (fact.lightness) within(`lightness of ${said}`, seen[0], fact.lightness);
    if (fact.chroma) within(`chroma of ${said}`, chroma(seen), fact.chroma);
    if (fact.hue) {
      const half = ((fact.hue[1] - fact.hue[0] + 360) % 360) / 2;
      const off = turn(hue(seen), fact.hue[0] + half);
      within(`degrees of ${said} from the middle of ${fact.hue.join(' to ')}`, off, [-half, half]);
    }
  } else if ('stronger' in fact) {
    const [one, two] = fact.stronger;
    expect(strength(one) / strength(two)).toBeGreaterThanOrEqual(fact.by ?? 1);
  } else if ('cleaner' in fact) {
    const [one, two] = fact.cleaner.map((id) => chroma(tintOfLightness(id, fact.at ?? 75))) as [
      number,
      number,
    ];
    expect(one / two, `C* ${one.toFixed(1)} and ${two.toFixed(1)}`).toBeGreaterThanOrEqual(fact.by ?? 1);
  } else if ('hueOf' in fact) {
    const [one, two] = fact.hueOf.map((id) => hue(tintOfLightness(id, fact.at ?? 75))) as [number, number];
    within(`degrees, hues ${one.toFixed(0)} and ${two.toFixed(0)}`, turn(one, two), fact.turned);
  } else if ('whiter' in fact) {
    expect(greyed(fact.whiter[0])).toBeGreaterThan(greyed(fact.whiter[1]));
  } else expect(contrastRatio(fact.hidesMore[0])).toBeGreaterThan(contrastRatio(fact.hidesMore[1]));
}

test('at least sixty facts, each once and with its source', () => {
  expect(FACTS.length).toBeGreaterThanOrEqual(60);
  expect(new Set(FACTS.map((fact) => JSON.stringify({ ...fact, source: '' }))).size).toBe(FACTS.length);
  for (const fact of FACTS) expect(fact.source.length).toBeGreaterThan(10);
});
test.each(FACTS.map((fact) => [words(fact), fact.source, fact] as const))(
  '%s (%s)',
  (_words, _source, fact) => check(fact),
);
