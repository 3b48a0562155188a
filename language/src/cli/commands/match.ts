import { createAnalyser } from '../../analyse.ts';
import {
  labOfCss,
  layerOfMix,
  paintNames,
  partsWords,
  propose,
  proposeFilm,
} from '../../features/propose.ts';
import type { Lab } from '../../optics/cie.ts';
import { BEYOND_SRGB, screenWords } from '../../optics/css.ts';
import type { Plan } from '../../plan/plan.ts';
import { filmMatchJson, matchJson } from '../../report/match-json.ts';
import { jsonText } from '../formats/json.ts';
import { hostFor } from '../host.ts';
import { oneLine, paint, swatch, table } from '../paper.ts';
import { CannotRun } from '../say.ts';
import { oneInput } from './study.ts';
import { throughCommand } from './through.ts';

interface Options {
  readonly mix?: string;
  readonly target?: string;
  readonly film?: string;
  readonly over?: string;
  readonly area?: string;
  readonly from?: string;
  readonly most?: number;
  readonly through?: string;
  readonly coats?: number;
  readonly by?: string;
  readonly write?: number;
  readonly format: string;
}

// a loss may be a gain by less than shows
const tenths = (v: number) => (Math.round(v * 10) / 10 + 0).toFixed(1);
const labWords = (lab: Lab) => lab.map((v) => String(Math.round(v) + 0)).join(' ');

/** Proportions for the target of a mix or for a colour; with `--film LAYER` how thick that glaze must lie. */
export function matchCommand(name: string, options: Options): number {
  const { through } = options;
  if (through !== undefined) {
    const strange = (['mix', 'film', 'over', 'from', 'most'] as const).find((o) => options[o] !== undefined);
    if (strange) throw new CannotRun(`--${strange} does not go with --through.`);
    return throughCommand(name, { ...options, through });
  }
  const alone = (['coats', 'by', 'write'] as const).find((o) => options[o] !== undefined);
  if (alone) throw new CannotRun(`--${alone} goes with --through LAYER,LAYER.`);
  const input = oneInput(name, 'match');
  const { plan, study } = createAnalyser()(input.text, input.uri, hostFor([input]));
  if ((options.mix === undefined) === (options.target === undefined))
    throw new CannotRun('Give either --mix NAME or --target COLOUR.');
  const layerNamed = (word: string) => {
    const layer = plan.layers.find((l) => l.name === word);
    if (!layer)
      throw new CannotRun(
        `There is no layer ‘${word}’ in ${input.path}. It has ${plan.layers.map((l) => l.name).join(', ') || 'none'}.`,
      );
    return layer;
  };
  const mix = options.mix === undefined ? undefined : plan.visible.mixes.get(options.mix);
  if (options.mix !== undefined && !mix)
    throw new CannotRun(
      `There is no mix ‘${options.mix}’. The plan has ${[...plan.visible.mixes.keys()].join(', ') || 'none'}.`,
    );
  const css = options.target ?? mix?.target?.css;
  if (css === undefined)
    throw new CannotRun(`The mix ‘${options.mix}’ has no target: mix ${options.mix} = … target #c9a24a.`);
  const target = labOfCss(css);
  if (!target)
    throw new CannotRun(`‘${css}’ is no colour. Write one as in CSS, for instance #c9a24a or lab(72 14 58).`);
  const layer =
    options.film !== undefined ? layerNamed(options.film) : mix ? layerOfMix(plan, mix.name) : undefined;
  const over = options.over === undefined ? undefined : layerNamed(options.over).index;
  const area =
    options.area ??
    layer?.areas[0] ??
    (over === undefined ? undefined : plan.layers[over]?.areas[0]) ??
    plan.areas[0]?.name ??
    'everything';
  if (!plan.areas.some((a) => a.name === area))
    throw new CannotRun(
      `There is no area ‘${area}’. The plan has ${plan.areas.map((a) => a.name).join(', ')}.`,
    );
  if (options.film !== undefined && layer) return film(study, layer, target, area, options.format);
  const from = options.from?.split(',').map((p) => p.trim());
  const there = paintNames(plan);
  const strange = from?.find((p) => !there.includes(p));
  if (strange !== undefined)
    throw new CannotRun(`There is no paint ‘${strange}’. The plan has ${there.join(', ') || 'none'}.`);
  const proposal = propose(study, {
    target,
    layer,
    over,
    area,
    from,
    most: options.most,
    within: mix?.within?.value.likely,
  });
  if (!proposal || proposal.recipes.length === 0)
    throw new CannotRun('There is no paint to mix, or nothing can be predicted of what lies beneath.');
  if (options.format === 'json') {
    process.stdout.write(jsonText(matchJson(proposal)));
  } else {
    const rows = proposal.recipes.map((r) => [
      `${swatch(r.hex, 3)}${partsWords(r.parts)}`,
      labWords(r.lab),
      screenWords(r),
      tenths(r.deltaE00),
      tenths(r.roundingLoss),
      tenths(r.metamerism),
    ]);
    process.stdout.write(
      `${paint.bold(oneLine(`Wanted ${css}`))} ${swatch(proposal.target.hex, 3)}(L* a* b* ${labWords(target)}), ${proposal.film}\n${table(['parts by volume', 'L* a* b*', 'sRGB', 'ΔE00', 'lost by rounding', 'change under A'], rows)}\n`,
    );
    if (proposal.recipes.some((r) => r.outOfGamut)) process.stdout.write(`${BEYOND_SRGB}\n`);
    for (const line of cautioned(plan, proposal.recipes)) process.stdout.write(`${line}\n`);
    if (!proposal.reachable) process.stdout.write(`Not reached. ${proposal.limit?.text ?? ''}\n`);
  }
  return proposal.reachable ? 0 : 1;
}

/** What speaks against paints of the recipes: a colour may be right and the paint wrong. */
function cautioned(
  plan: Plan,
  recipes: readonly { readonly parts: readonly { readonly paint: string }[] }[],
): string[] {
  const used = [...new Set(recipes.flatMap((r) => r.parts.map((p) => p.paint)))];
  return used.flatMap((name) => {
    const parts = plan.visible.paints.get(name)?.formula?.parts ?? [];
    const pigments = parts.flatMap((p) =>
      p.ingredient.is.kind === 'pigment' ? [p.ingredient.is.pigment] : [],
    );
    const against = pigments.flatMap((p) => [
      ...(p.lightfastness && p.lightfastness.value !== 'I' && p.lightfastness.value !== 'II'
        ? [`${p.id} fades (ASTM ${p.lightfastness.value})`]
        : []),
      ...(p.lightfastnessNote?.value.includes('fugitive')
        ? [`${p.id} fades (${p.lightfastnessNote.value})`]
        : []),
      ...(p.code === 'PW4' ? [`${p.id} makes films brittle`] : []),
      ...(p.hazards.includes('lead') ||
      p.hazards.includes('cadmium') ||
      p.hazards.includes('mercury') ||
      p.hazards.includes('arsenic') ||
      p.hazards.includes('chromium-vi')
        ? [`${p.id} is poisonous`]
        : []),
    ]);
    return against.length > 0
      ? [
          `Before you take ‘${name}’: ${against.join(', ')}. ‘paintplan explain ${pigments[0]?.id}’ says more.`,
        ]
      : [];
  });
}

function film(
  study: Parameters<typeof proposeFilm>[0],
  layer: Parameters<typeof proposeFilm>[1],
  target: Lab,
  area: string,
  format: string,
): number {
  const proposal = proposeFilm(study, layer, target, area);
  if (!proposal) throw new CannotRun(`Nothing can be predicted of ‘${layer.name}’ on ${area}.`);
  if (format === 'json') process.stdout.write(jsonText(filmMatchJson(proposal)));
  else
    process.stdout.write(
      `‘${layer.name}’ on ${area} comes nearest with ${proposal.film.thickness.toFixed(1)} µm (ΔE00 ${proposal.film.deltaE00.toFixed(1)}), or ${proposal.coats.coats === undefined || proposal.coats.coats === 1 ? 'one coat' : `${proposal.coats.coats} coats`} of its own film (ΔE00 ${proposal.coats.deltaE00.toFixed(1)}).\n${proposal.film.reachable ? '' : `Not reached. ${proposal.film.limit?.text ?? ''}\n`}`,
    );
  return proposal.film.reachable || proposal.coats.reachable ? 0 : 1;
}
