import { createAnalyser } from '../../analyse.ts';
import { type Backwards, backwards, type Found, layersThrough } from '../../features/backwards.ts';
import { labOfCss, partsWords } from '../../features/propose.ts';
import type { Lab } from '../../optics/cie.ts';
import { shown } from '../../optics/css.ts';
import type { Plan } from '../../plan/plan.ts';
import { throughJson } from '../../report/match-json.ts';
import { dayWords } from '../../studio/words.ts';
import { WITHIN } from '../../study/defaults.ts';
import { jsonText } from '../formats/json.ts';
import { hostFor } from '../host.ts';
import { oneLine, paint, swatch, wrap } from '../paper.ts';
import { CannotRun } from '../say.ts';
import { isStandard } from '../targets.ts';
import { writeWhole } from '../write.ts';
import { oneInput } from './study.ts';

export interface ThroughOptions {
  readonly through: string;
  readonly target?: string;
  readonly area?: string;
  readonly coats?: number;
  readonly by?: string;
  readonly write?: number;
  readonly format: string;
}

const listed = (names: readonly string[]) => names.join(', ') || 'none';

/** Which grey beneath, which glaze over it, how many coats: ways through the layers named, or the one taken written down. */
export function throughCommand(name: string, options: ThroughOptions): number {
  const input = oneInput(name, 'match');
  const { plan, study } = createAnalyser()(input.text, input.uri, hostFor([input]));
  if (plan.kind !== 'plan') throw new CannotRun(`${input.path} is no plan: layers are sought in plans only.`);
  if (options.write !== undefined && isStandard(input))
    throw new CannotRun('What came through standard input cannot be written to; name the file.');
  const layers = options.through.split(',').map((word) => {
    const layer = plan.layers.find((l) => l.name === word.trim());
    if (!layer)
      throw new CannotRun(
        `There is no layer ‘${word.trim()}’ in ${input.path}. It has ${listed(plan.layers.map((l) => l.name))}.`,
      );
    return layer;
  });
  const { area, target, within } = wantedIn(plan, options, layersThrough(plan, layers));
  const found = backwards(study, {
    area,
    target,
    within,
    layers,
    coats: options.coats,
    by: options.by === undefined ? undefined : dayOf(options.by, study.calendar.dated),
  });
  if ('hindered' in found) throw new CannotRun(found.hindered);
  if (options.format === 'json')
    process.stdout.write(jsonText(throughJson({ area, target, within, ways: found })));
  else print(found, { area, target, within, dated: study.calendar.dated });
  const best = found[0];
  if (options.write !== undefined) {
    const chosen = found[options.write - 1];
    if (!chosen)
      throw new CannotRun(
        found.length === 0
          ? 'There is no way to write.'
          : `There are only ${found.length} ways; --write takes 1 to ${found.length}.`,
      );
    writeWhole(input.path, chosen.text);
    process.stderr.write(`${oneLine(input.path)}: way ${options.write} written.\n`);
  }
  return best?.reached ? 0 : 1;
}

function wantedIn(
  plan: Plan,
  options: ThroughOptions,
  areas: readonly string[],
): Pick<Backwards, 'area' | 'target' | 'within'> {
  const inPlan = plan.targets.filter((t) => t.in?.areas.some((a) => areas.includes(a)));
  if (areas.length === 0) throw new CannotRun('The layers named lie on no area together.');
  const area =
    options.area ?? inPlan.flatMap((t) => t.in?.areas ?? []).find((a) => areas.includes(a)) ?? areas[0]!;
  if (!areas.includes(area))
    throw new CannotRun(
      plan.areas.some((a) => a.name === area)
        ? `The layers named do not all lie on ${area}. Together they lie on ${listed(areas)}.`
        : `There is no area ‘${area}’. The plan has ${listed(plan.areas.map((a) => a.name))}.`,
    );
  const stated = plan.targets.find((t) => t.in?.areas.includes(area));
  const css = options.target ?? stated?.colour?.css;
  if (css === undefined)
    throw new CannotRun(
      `Nothing is wanted of ${area}: give --target COLOUR, or write ‘target ${area} #c9a24a’ in the plan.`,
    );
  const target = labOfCss(css);
  if (!target)
    throw new CannotRun(`‘${css}’ is no colour. Write one as in CSS, for instance #c9a24a or lab(72 14 58).`);
  return { area, target, within: stated?.within?.value.likely ?? WITHIN };
}

function dayOf(word: string, dated: boolean): number {
  const day = /^\d{4}-\d\d-\d\d$/.test(word) ? Date.parse(`${word}T00:00:00Z`) / 86_400_000 : Number.NaN;
  if (Number.isNaN(day)) throw new CannotRun(`‘${word}’ is no date. Write one as 2027-03-01.`);
  if (!dated)
    throw new CannotRun('The plan has no dates: write its first day, for instance start 2027-01-04.');
  return day;
}

const percent = (share: number) => `${Math.round(share * 100)} %`;
const tenth = (v: number) => v.toFixed(1);
const labWords = (lab: Lab) => lab.map((v) => String(Math.round(v) + 0)).join(' ');

const layerWords = ({ layer, parts, medium, share, coats }: Found['layers'][number]): string =>
  `${layer}: ${partsWords(parts)}${medium ? `, ${percent(share)} ${medium}` : ''}${coats > 1 ? `, ${coats} coats` : ''}`;

function print(
  found: readonly Found[],
  { area, target, within, dated }: Pick<Backwards, 'area' | 'target' | 'within'> & { dated: boolean },
): void {
  const out = (line: string) => process.stdout.write(`${line}\n`);
  out(
    `${paint.bold(oneLine(`Wanted on ${area}`))} ${swatch(shown(target).hex, 3)}L* a* b* ${labWords(target)}, within ${tenth(within)}`,
  );
  for (const [i, way] of found.entries()) {
    out('');
    out(
      `${i + 1}  ${paint.bold(way.kind)}  ${way.strip.map(({ colour }) => swatch(colour.hex).trimEnd()).join('')}  ΔE00 ${tenth(way.deltaE00)}, foretold within ${tenth(way.colour.radius)}`,
    );
    for (const layer of way.layers) out(wrap(layerWords(layer), 5));
    const facts = [
      `${percent(way.glow)} of the light comes back from beneath`,
      `films 30 % off move it by ${tenth(way.slip)}`,
      ...(way.day === undefined ? [] : [`laid likely ${dayWords(way.day, dated, 'up')}`]),
    ];
    out(wrap(`${facts.join('; ')}.`, 5));
    if (way.moves.length > 0)
      out(wrap(`Moves ${way.moves.map((m) => `${m.area} by ${tenth(m.deltaE00)}`).join(', ')}.`, 5));
  }
  if (found.length === 0) out('No way through these layers keeps the plan as sound as it is.');
  else if (!found[0]!.reached) out(`\nNearest ${tenth(found[0]!.deltaE00)}; wanted within ${tenth(within)}.`);
}
