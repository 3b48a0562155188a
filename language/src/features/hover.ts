/** What a hover says, as Markdown: figures with their sources, and what they rest on. */
import type { Source } from '../materials/types.ts';
import { formulaWords, paintWords } from '../plan/formula-words.ts';
import { legible } from '../plan/legible.ts';
import type { Ingredient, Layer, Medium, Mix, Paint, Place, Plan } from '../plan/plan.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import { rules } from '../rules/index.ts';
import { clocksWords } from '../studio/words.ts';
import { thingAt } from './at.ts';
import { type Description, describeMaterial, describePigment, sourceWords } from './describe.ts';
import { fieldWords } from './fields.ts';
import { fatness, percent, range, time } from './figures.ts';

export interface Hover {
  readonly markdown: string;
  readonly place: Place;
  /** a layer whose build-up is worth drawing, on the first of its areas */
  readonly layer?: { readonly index: number; readonly area: string };
}

/** A plan's own words may hold anything; in Markdown they must stay words. */
export const escaped = (text: string): string =>
  legible(text)
    .replace(/[\\`*_{}[\]()#+\-.!|<>&~]/g, '\\$&')
    .replace(/\n/g, ' ');

export function described({ title, rows }: Description): string {
  const notes: string[] = [];
  const mark = (s: Source | undefined) => {
    if (!s) return '';
    const words = sourceWords(s);
    let at = notes.indexOf(words);
    if (at < 0) at = notes.push(words) - 1;
    return ` ⁽${at + 1}⁾`;
  };
  const lines = rows.map((r) => `| ${r.label} | ${escaped(r.words)}${mark(r.source)} |`);
  const sources = notes.map((n, i) => `${i + 1}. ${escaped(n)}`).join('\n');
  return [`**${escaped(title)}**`, `| | |\n|---|---|\n${lines.join('\n')}`, sources].join('\n\n');
}

const withDescription = (title: string, description: string | undefined, lines: readonly string[]) =>
  [`**${escaped(title)}**`, ...(description ? [escaped(description)] : []), lines.join('\n')].join('\n\n');

function paintHover(paint: Paint): string {
  const oil = paint.oil ? `, ${percent(paint.oil.value)} oil by mass` : '';
  return withDescription(`paint ${paint.name}`, paint.description, [`${escaped(paintWords(paint))}${oil}`]);
}

const mixHover = (mix: Mix) =>
  withDescription(`mix ${mix.name}`, mix.description, [escaped(formulaWords(mix.formula) || 'nothing yet')]);

/** Volume shares by material, mediums within it opened. Circles were reported elsewhere and end here. */
export function mediumShares(medium: Medium, open: readonly Medium[] = []): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  const parts = medium.formula?.parts ?? [];
  const total = parts.reduce((sum, p) => sum + (p.amount?.value ?? 1), 0);
  if (open.includes(medium) || !(total > 0)) return shares;
  for (const part of parts) {
    const share = (part.amount?.value ?? 1) / total;
    const is = part.ingredient.is;
    const within =
      is.kind === 'medium'
        ? mediumShares(is.medium, [...open, medium])
        : new Map([[part.ingredient.name, 1]]);
    for (const [name, s] of within) shares.set(name, (shares.get(name) ?? 0) + s * share);
  }
  return shares;
}

function mediumHover(medium: Medium): string {
  const lines = [...mediumShares(medium)].map(([name, s]) => `- ${escaped(name)} ${Math.round(s * 100)} %`);
  return withDescription(`medium ${medium.name}`, medium.description, [
    escaped(formulaWords(medium.formula) || 'nothing yet'),
    '',
    'By volume:',
    ...lines,
  ]);
}

function layerLines(study: LayerStudy, all: Study): string[] {
  const { composition: c, drying, layer } = study;
  const lines: string[] = [];
  if (c) {
    lines.push(`- pigment ${percent(c.pvc)} of the dried film, critical at ${percent(c.cpvc)}`);
    lines.push(`- fatness ${fatness(c.fatness)}: 0 is just bound, 100 pure binder`);
    lines.push(`- dry film ${range(c.dryFilm, 'µm')} a coat, ${range(c.wetFilm, 'µm')} wet`);
    for (const [area, below] of study.below) {
      const under = below.map((i) => all.layers[i]).find((l) => l?.composition);
      if (under?.composition)
        lines.push(
          `- on ${escaped(area)}: ${escaped(under.layer.name)} below has fatness ${fatness(under.composition.fatness)}`,
        );
    }
  }
  if (drying)
    lines.push(
      `- open ${time(drying.open)}, touch-dry ${time(drying.touchDry)}, ready ${time(drying.ready)}, firm ${time(drying.firm)}`,
    );
  const entry = all.calendar.entries.findLast((e) => e.index === layer.index);
  if (entry && entry.painted === undefined)
    lines.push(`- to be laid ${clocksWords(entry, all.calendar.dated)}`);
  for (const a of study.assumptions)
    lines.push(`- assumed: ${escaped(a.field)} ${escaped(a.value)}, ${escaped(a.why)}`);
  return lines.length > 0 ? lines : [`- ${layer.kind}: nothing to compute`];
}

export function layerHover(layer: Layer, study: Study): string {
  const computed = study.layers[layer.index];
  return withDescription(
    `${layer.kind} ${layer.name}`,
    layer.description,
    computed ? layerLines(computed, study) : [],
  );
}

function ingredientHover(ingredient: Ingredient): string | undefined {
  const is = ingredient.is;
  switch (is.kind) {
    case 'paint':
      return paintHover(is.paint);
    case 'mix':
      return mixHover(is.mix);
    case 'medium':
      return mediumHover(is.medium);
    case 'pigment':
      return described(describePigment(is.pigment));
    case 'binder':
    case 'solvent':
      return describeMaterial(ingredient.name).map(described).join('\n\n---\n\n');
    case 'needs-variety':
      return is.choices.map((p) => `- ${escaped(p.id)}: ${escaped(p.names.join(', '))}`).join('\n');
    default:
      return undefined;
  }
}

function nameHover(plan: Plan, study: Study, name: string): string | undefined {
  const medium = plan.visible.mediums.get(name);
  if (medium) return mediumHover(medium);
  const area = plan.areas.find((a) => a.name === name);
  if (area)
    return withDescription(`area ${name}`, area.description, [
      area.share ? `${percent(area.share.value)} of the support` : '',
    ]);
  const group = plan.groups.find((g) => g.name === name);
  if (group)
    return withDescription(`group ${name}`, group.description, [
      escaped(group.members.map((m) => m.name).join(', ')),
    ]);
  const layer = plan.layers.find((l) => l.name === name);
  if (layer) return layerHover(layer, study);
  const materials = describeMaterial(name);
  return materials.length > 0 ? materials.map(described).join('\n\n---\n\n') : undefined;
}

/** Undefined where there is nothing to say. */
export function hover(plan: Plan, study: Study, offset: number): Hover | undefined {
  const thing = thingAt(plan, offset);
  if (!thing) return undefined;
  const markdown = ((): string | undefined => {
    switch (thing.kind) {
      case 'ingredient':
        return ingredientHover(thing.ingredient);
      case 'name':
        return nameHover(plan, study, thing.use.name);
      case 'paint':
        return paintHover(thing.paint);
      case 'medium':
        return mediumHover(thing.medium);
      case 'mix':
        return mixHover(thing.mix);
      case 'pigment':
        return thing.pigment.pigment && described(describePigment(thing.pigment.pigment));
      case 'area':
        return nameHover(plan, study, thing.area.name);
      case 'layer':
        return layerHover(thing.layer, study);
      case 'field': {
        const words = fieldWords(thing.of, thing.field);
        return words ? `**${thing.field}**: ${escaped(words)}` : undefined;
      }
      case 'rule': {
        const rule = rules.find((r) => r.id === thing.rule);
        return (
          rule &&
          `**${rule.id}**: ${escaped(rule.title)}\n\n${escaped(rule.why)}\n\n${escaped(rule.whatToDo)}`
        );
      }
    }
  })();
  if (!markdown) return undefined;
  const area = thing.kind === 'layer' ? thing.layer.areas[0] : undefined;
  return {
    markdown,
    place: thing.place,
    ...(thing.kind === 'layer' && area !== undefined ? { layer: { index: thing.layer.index, area } } : {}),
  };
}
