/** A layer's own paints in other proportions, for a colour it is to give. */
import type { Lab } from '../../optics/cie.ts';
import { match, type Paint } from '../../optics/match.ts';
import type { Fix, Layer } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import { compositionOf } from '../../study/what-if.ts';
import { withAmounts } from './pigments.ts';
import { layOfLayer } from './seen.ts';
import { figure, label } from './words.ts';

/** Shares of a film may change by this much fatness before other rules have a say. */
const AS_FAT = 0.02;

/** Other proportions of the paints already in the last layer, where they reach the target. */
export function proportions(study: Study, layer: Layer, area: string, target: Lab, within: number): Fix[] {
  const { plan } = study;
  const formula = layer.colour?.kind === 'formula' ? layer.colour.formula : undefined;
  const composition = study.layers[layer.index]?.composition;
  const below = study.beneath(area, layer.index);
  const face = study.beneath(area, plan.layers.length)?.face;
  const share = composition?.mediumShare.likely ?? 0;
  if (!formula || !composition || !below || !face || share > 0.98) return [];
  if (
    formula.parts.length < 2 ||
    formula.parts.length > 6 ||
    (formula.amounts !== 'parts' && formula.amounts !== 'none')
  )
    return [];
  // a layer on several areas with targets serves them all; what suits one may spoil another
  if (plan.targets.filter((t) => t.in?.areas.some((a) => layer.areas.includes(a))).length !== 1) return [];
  const paints: Paint[] = [];
  for (const [i, part] of formula.parts.entries()) {
    const alone: Layer = {
      ...layer,
      medium: undefined,
      colour: {
        kind: 'formula',
        formula: { ...formula, parts: [{ ...part, amount: undefined }], amounts: 'none' },
      },
    };
    const made = compositionOf(alone);
    const lay = layOfLayer(study, alone);
    if (!made || lay.kind !== 'film') return [];
    const solids = made.volumeSolids.likely;
    paints.push({
      name: String(i),
      solids,
      pigments: lay.pigments.map((p) => ({ optical: p.optical, fraction: p.fraction * solids })),
    });
  }
  const lay = layOfLayer(study, layer);
  if (lay.kind !== 'film') return [];
  const best = match({
    target,
    paints,
    medium: { share, solids: composition.mediumSolids },
    thickness: lay.thickness,
    below: below.stack,
    face,
    within,
    most: Math.min(4, paints.length),
    recipes: 1,
  }).recipes[0];
  // room for what rounding and the face may add
  if (!best || best.deltaE00 > within * 0.95) return [];
  const amounts = formula.parts.map((_, i) => best.parts.find((p) => p.paint === String(i))?.parts ?? 0);
  const edits = withAmounts(formula, amounts);
  const parts = formula.parts.flatMap((p, i) =>
    amounts[i] ? [{ ...p, amount: { value: amounts[i], kind: 'parts' as const, place: p.place } }] : [],
  );
  const then = compositionOf({
    ...layer,
    colour: { kind: 'formula', formula: { ...formula, parts, amounts: 'parts' } },
  });
  if (!edits || !then || Math.abs(then.fatness.likely - composition.fatness.likely) > AS_FAT) return [];
  const words = formula.parts.flatMap((p, i) => (amounts[i] ? [`${amounts[i]} ${p.ingredient.name}`] : []));
  return [
    {
      title: `Mix ${label(layer)} of ${words.join(' + ')} (predicted ΔE00 ${figure(best.deltaE00)})`,
      edits,
    },
  ];
}
