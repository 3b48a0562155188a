import { parseColour } from '../optics/css.ts';
import { match, type Paint } from '../optics/match.ts';
import type { Fix, Layer } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { compositionOf } from '../study/what-if.ts';
import { withAmounts } from './pigments.ts';
import type { Rule } from './rule.ts';
import { isClear, layOfLayer, lightness, stackOn } from './seen.ts';
import { called, figure, listed, ours, quoted } from './words.ts';

/** The last layer on an area that gives it colour. */
function lastColour(study: Study, area: string): Layer | undefined {
  const { plan } = study;
  const index = stackOn(study, area).findLast((i) => {
    const layer = plan.layers[i];
    return layer && layer.kind !== 'varnish' && !isClear(study, layer);
  });
  return index === undefined ? undefined : plan.layers[index];
}

/** Shares of a film may change by this much fatness before other rules have a say. */
const AS_FAT = 0.02;

/** Other proportions of the paints already in the last layer, where they reach the target. */
function proportions(
  study: Study,
  layer: Layer,
  area: string,
  target: readonly [number, number, number],
  within: number,
): Fix[] {
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
    below: below.reflectance,
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
      title: `Mix ${called(layer)} of ${words.join(' + ')} (predicted ΔE00 ${figure(best.deltaE00)})`,
      edits,
    },
  ];
}

/** What the last colour of an area is predicted to be, against what is wanted there. */
export const targetMissed: Rule = {
  id: 'target-missed',
  title: 'Target colour missed',
  severity: 'warning',
  why: 'The colour predicted at the end of an area is further from its target than the plan allows. The prediction has a radius of its own, so a near miss may still be a hit.',
  whatToDo:
    'Change the proportions of the last colour, its film or what lies beneath; paintplan match proposes proportions.',
  sources: [
    { text: 'ISO/CIE 11664-6 (CIEDE2000) for the difference', mark: 'published' },
    ours('within 5 ΔE00 where the plan does not say'),
  ],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
    for (const area of study.areas) {
      const found = area.target();
      const written = plan.targets.findLast((t) => t.in?.areas.includes(area.name));
      const last = area.buildUp().at(-1)?.colour;
      if (!found?.deltaE00 || !written || !last || found.deltaE00 <= found.within) continue;
      const target = parseColour(found.css) ?? found.lab;
      const layer = lastColour(study, area.name);
      const off = directions(target, last.lab);
      yield {
        message: `${quoted(area.name)} is predicted ${figure(found.deltaE00)} ΔE00 from its target (within ${figure(found.within)} is wanted; the prediction may be off by ${figure(last.radius)}): ${off}. ${lightness(target)} is wanted, ${lightness(last.lab)} predicted. Change the last colour${layer ? ` (${called(layer)})` : ''} or what it lies on.`,
        place: written.place,
        severity: found.deltaE00 - last.radius > found.within ? 'warning' : 'info',
        layer: layer?.index,
        related: layer
          ? [{ message: `the last colour there, ${quoted(layer.name)}`, place: layer.namePlace }]
          : [],
        fixes: layer ? proportions(study, layer, area.name, target, found.within) : [],
      };
    }
  },
};

/** How a colour differs from the wanted one, in a painter's words. */
function directions(
  wanted: readonly [number, number, number],
  got: readonly [number, number, number],
): string {
  const [l, a, b] = [got[0] - wanted[0], got[1] - wanted[1], got[2] - wanted[2]];
  const words: string[] = [];
  if (Math.abs(l) >= 2) words.push(l > 0 ? 'too light' : 'too dark');
  if (Math.abs(a) >= 2) words.push(a > 0 ? 'too red' : 'too green');
  if (Math.abs(b) >= 2) words.push(b > 0 ? 'too yellow' : 'too blue');
  return words.length > 0 ? listed(words) : 'near in every direction, yet beyond what is allowed';
}
