/**
 * What a pigment is expected to scatter before any film is looked at. A pigment is seen through because its refractive
 * index is near the oil's or its particles are far smaller than the light's wavelength, and the trade's class of
 * transparency says which is so. The levels are those of the pigments measured in oil: transparent ones (cochineal lake,
 * viridian, Prussian blue, barytes, chalk) lie about 0.03 per µm, opaque ones (lead white, vermilion, minium, chrome
 * yellow) about 0.8; the two classes between are set between them.
 */
import { allPigments } from '../../src/materials/catalogue.ts';
import type { Transparency } from '../../src/materials/types.ts';
import type { Expectations } from './estimate.ts';

const LEVELS = {
  transparent: [0.03, 1.5],
  'semi-transparent': [0.07, 1.8],
  'semi-opaque': [0.35, 1.8],
  opaque: [0.8, 1.7],
} as const;

/** Sulphides, selenides, lead and mercury colours, vanadates: light is absorbed up to an edge and not beyond. */
const EDGES = new Set([
  'PY34',
  'PY35',
  'PY37',
  'PO20',
  'PR108',
  'PR108 light',
  'PR108 deep',
  'PR105',
  'PR106',
  'PY39',
  'PR39',
  'PY41',
  'PY41 light',
  'PY184',
  'PY53',
]);

/** Natural earths hold clay, quartz and coarse grains beside their colour: seen through, but not clear. */
const EARTHS = /^(PBr7|PY43|PR102)/;

const transparencyOf = (id: string): Transparency | undefined =>
  allPigments().find((p) => p.id === id)?.transparency.value;

const levelOf = (id: string, transparency = transparencyOf(id)): readonly [level: number, factor: number] => {
  if (EARTHS.test(id) && transparency !== 'opaque' && transparency !== 'semi-opaque')
    return LEVELS['semi-transparent'];
  // A pigment of no known class is expected between all of them, and not firmly.
  return (transparency && LEVELS[transparency]) ?? [0.15, 3];
};

/** `id` of the catalogue. */
export function expected(id: string): Pick<Expectations, 'scattering' | 'edge'> {
  const [level, factor] = levelOf(id);
  return { scattering: [Math.log(level), Math.log(factor)], edge: EDGES.has(id) };
}

/**
 * The most a clear or half-clear pigment scatters per µm; no limit for the others. Its class of transparency has to be
 * said where the catalogue does not know it yet.
 */
export function scatteringLimit(id: string, transparency = transparencyOf(id)): number {
  if (transparency !== 'transparent' && transparency !== 'semi-transparent') return Number.POSITIVE_INFINITY;
  const [level, factor] = levelOf(id, transparency);
  return level * factor;
}
