/**
 * How long each colour of a plan may be expected to stay: its lightfastness class first, then, where light takes it, the
 * order of years to a just noticeable fade at the plan's light. The class is tested on a tint of 40 % reflectance; a
 * thin glaze has less colour to lose and is told first. Doses and classes are marked as the tables mark them.
 */
import { blueWoolOf, blueWoolSource, blueWools } from '../materials/blue-wool.ts';
import { between, exactly, type Interval } from '../materials/interval.ts';
import type { Lightfastness, Mark, Pigment, Source } from '../materials/types.ts';
import type { Plan } from '../plan/plan.ts';
import type { LayerStudy, PermanenceEntry } from '../results/study.ts';
import { darkens } from './darkening.ts';
import { yearsToFade } from './fade.ts';
import { layerPigments } from './pigments.ts';

/** The light a picture is taken to hang in where the plan tells none. */
export const LIGHT = { lux: 150, hoursPerYear: 3000 };

/** µm of all coats under which a film is thin enough for its fading to show sooner than the class says. */
const THIN = 15;

/** Weakest first: a source rests on no better ground than its weakest part. */
const MARKS: readonly Mark[] = [
  'assumption',
  'memory',
  'common practice',
  'second-hand',
  'derived',
  'published',
];
const weaker = (a: Mark, b: Mark): Mark => (MARKS.indexOf(a) <= MARKS.indexOf(b) ? a : b);

/**
 * Mlx·h to a just noticeable fade. The low end is the lowest blue wool of the class in light with its ultraviolet, the
 * high end the highest without it; the likely one lies midway on the scale of doses.
 */
export function doseOf(lightfastness: Lightfastness): Interval {
  const [low, high] = blueWoolOf[lightfastness];
  const row = (n: number) => blueWools.find((b) => b.blueWool === n)!;
  const [least, most] = [row(low).withUv, row(high).withoutUv];
  return between(least, most, Math.sqrt(least * most));
}

const doseSource = blueWools[0]!.source;

/** Class and dose together, with the weaker mark of the two. */
const fadeSource = (of: Source): Source => ({
  text: `${of.text}; dose: ${doseSource.text}; ${blueWoolSource.text}`,
  mark: weaker(weaker(of.mark, doseSource.mark), blueWoolSource.mark),
});

const isThin = ({ layer, dryFilm }: LayerStudy): boolean =>
  ['glaze', 'imprimatura', 'scumble'].includes(layer.kind) ||
  (dryFilm !== undefined && dryFilm.likely <= THIN);

function light(plan: Plan): { readonly lux: Interval; readonly hours: Interval } {
  const { light: stated } = plan.studio;
  const hours = stated?.hoursPerYear?.value;
  return { lux: stated?.lux.value ?? exactly(LIGHT.lux), hours: hours ?? exactly(LIGHT.hoursPerYear) };
}

const RANK: Readonly<Record<Lightfastness, number>> = { V: 0, IV: 1, III: 2, II: 3, I: 5 };
/** Unlisted colours stand between those that fade and those that do not: nobody knows. */
const rank = (p: Pigment): number =>
  p.lightfastness ? RANK[p.lightfastness.value] : /fugitive/i.test(p.lightfastnessNote?.value ?? '') ? 0 : 4;

const NOT_LISTED: Source = { text: 'no class found in the tables', mark: 'assumption' };

function entry(plan: Plan, study: LayerStudy, pigment: Pigment): PermanenceEntry {
  const { layer } = study;
  const blueWool = pigment.lightfastness;
  const fades = blueWool !== undefined && blueWool.value !== 'I';
  const { lux, hours } = light(plan);
  // What light an old painting has already had, nobody knows.
  const years = fades && plan.kind !== 'record' ? yearsToFade(doseOf(blueWool.value), lux, hours) : undefined;
  const notes = [
    ...(fades && isThin(study)
      ? ['a thin film: it shows sooner than the class, tested on a tint, lets expect']
      : []),
    ...(!blueWool && pigment.lightfastnessNote ? [pigment.lightfastnessNote.value] : []),
    ...(darkens(pigment) ? [darkens(pigment)!.what] : []),
  ];
  return {
    layer: layer.name,
    index: layer.index,
    pigment,
    lightfastness: blueWool?.value,
    source: blueWool
      ? years
        ? fadeSource(blueWool.source)
        : blueWool.source
      : (pigment.lightfastnessNote?.source ?? NOT_LISTED),
    years,
    note: notes.length > 0 ? notes.join('; ') : undefined,
  };
}

/** One entry for every pigment in every layer: what fades first, in thin films before thick, then from the bottom up. */
export function permanence(study: {
  readonly plan: Plan;
  readonly layers: readonly LayerStudy[];
}): readonly PermanenceEntry[] {
  return study.layers
    .flatMap((layer) =>
      layerPigments(layer).map(({ pigment }) => ({
        key: rank(pigment) * 2 + (isThin(layer) ? 0 : 1),
        entry: entry(study.plan, layer, pigment),
      })),
    )
    .map((e, i) => ({ ...e, i, key: e.entry.lightfastness === 'I' ? RANK.I * 2 : e.key }))
    .sort((a, b) => a.key - b.key || a.i - b.i)
    .map((e) => e.entry);
}
