/** Rewrites offered at an offset that mend nothing: another way to say the same. */
import { percentages } from '../plan/formula-words.ts';
import type { Fix, Formula, Layer, Plan } from '../plan/plan.ts';
import { removalPlace } from '../plan/removal.ts';
import type { Study } from '../results/study.ts';
import { inside } from './at.ts';
import { labOfCss, layerOfMix, partsWords, propose } from './propose.ts';

export interface Rewrite {
  /** kind of the protocol */
  readonly kind: 'refactor.extract' | 'refactor.inline' | 'refactor.rewrite';
  readonly fix: Fix;
}

const source = (text: string, f: { readonly place: { readonly start: number; readonly end: number } }) =>
  text.slice(f.place.start, f.place.end);

const eolOf = (text: string) => /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';

function free(plan: Plan, wanted: string): string {
  const taken = new Set([
    ...plan.visible.mixes.keys(),
    ...plan.visible.paints.keys(),
    ...plan.visible.pigments.keys(),
    ...plan.visible.mediums.keys(),
  ]);
  for (let i = 1; ; i++) {
    const name = i === 1 ? wanted : `${wanted}-${i}`;
    if (!taken.has(name)) return name;
  }
}

function extract(plan: Plan, text: string, layer: Layer, formula: Formula): Rewrite | undefined {
  if (formula.parts.length < 2) return undefined;
  const name = free(plan, `${layer.name}-mix`);
  const line =
    layer.description === undefined ? layer.place.start : text.lastIndexOf('///', layer.place.start);
  const at = { ...layer.place, start: line, end: line };
  const eol = eolOf(text);
  return {
    kind: 'refactor.extract',
    fix: {
      title: `Give these proportions a name: mix ${name}`,
      edits: [
        { place: at, text: `mix ${name} = ${source(text, formula)}${eol}${eol}` },
        { place: formula.place, text: name },
      ],
    },
  };
}

function inline(text: string, formula: Formula, offset: number): Rewrite | undefined {
  const only = formula.parts.length === 1 ? formula.parts[0] : undefined;
  if (!only || !inside(only.ingredient.place, offset) || only.ingredient.is.kind !== 'mix') return undefined;
  const { mix } = only.ingredient.is;
  // a mix of another file keeps its text there
  if (!mix.formula || mix.place.uri !== formula.place.uri) return undefined;
  return {
    kind: 'refactor.inline',
    fix: {
      title: `Write out the mix ${mix.name} here`,
      edits: [{ place: formula.place, text: source(text, mix.formula) }],
    },
  };
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

function convert(text: string, formula: Formula): Rewrite | undefined {
  const { parts } = formula;
  const amounts = parts.map((p) => p.amount?.value ?? 1);
  if (parts.length < 2 || amounts.some((a) => !(a > 0))) return undefined;
  const written = (values: readonly string[]) =>
    parts
      .map(
        (p, i) =>
          `${values[i]}${source(text, { place: { start: p.ingredient.place.start, end: p.ingredient.variety?.place.end ?? p.ingredient.place.end } })}`,
      )
      .join(' + ');
  if (formula.amounts === 'parts' || formula.amounts === 'none') {
    const now = percentages(amounts);
    if (now.some((v) => v === 0)) return undefined;
    return {
      kind: 'refactor.rewrite',
      fix: {
        title: 'Write the parts as percentages',
        edits: [{ place: formula.place, text: written(now.map((v) => `${v} % `)) }],
      },
    };
  }
  if (formula.amounts !== '%' || amounts.some((a) => !Number.isInteger(a))) return undefined;
  const common = amounts.reduce(gcd);
  return {
    kind: 'refactor.rewrite',
    fix: {
      title: 'Write the percentages as parts',
      edits: [{ place: formula.place, text: written(amounts.map((a) => `${a / common} `)) }],
    },
  };
}

/** One layer an area, names told apart by the area. */
function split(text: string, layer: Layer): Rewrite | undefined {
  const on = layer.fields.find((f) => f.name === 'on');
  if (!on || layer.on.length < 2 || layer.except.length > 0) return undefined;
  const whole = source(text, layer);
  const base = layer.place.start;
  const eol = eolOf(text);
  const copies = layer.on.map((area) => {
    const head = whole.slice(0, layer.namePlace.end - base);
    const middle = whole.slice(layer.namePlace.end - base, on.place.start - base);
    return `${head}-${area.name}${middle}on ${area.name}${whole.slice(on.place.end - base)}`;
  });
  return {
    kind: 'refactor.rewrite',
    fix: {
      title: `Split ‘${layer.name}’ into one layer for each area`,
      edits: [{ place: layer.place, text: copies.join(`${eol}${eol}`) }],
    },
  };
}

/** A plan's layer as the record of what was done: what only a plan has goes, the amounts stay. */
function recorded(text: string, layer: Layer): Rewrite | undefined {
  const planOnly = layer.fields.filter((f) =>
    ['prepare', 'wait', 'after', 'painted', 'dry'].includes(f.name),
  );
  if (planOnly.length === 0) return undefined;
  const told = planOnly.map((f) => source(text, f).replaceAll('"', '’')).join('; ');
  let end = 0;
  const edits = planOnly.map((f, i) => {
    const { place } = i === 0 ? f : { place: removalPlace(text, f.place) };
    const start = Math.max(place.start, end);
    end = place.end;
    return {
      place: { ...place, start },
      text: i === 0 ? `evidence "as planned: ${told}"` : '',
    };
  });
  return { kind: 'refactor.rewrite', fix: { title: `Turn ‘${layer.name}’ into a layer of a record`, edits } };
}

/** Proportions that come nearest to the target of a mix, the best few. Only asked for where the cursor is. */
function proposals(plan: Plan, study: Study, offset: number): Rewrite[] {
  const mix = plan.mixes.find((m) => inside(m.place, offset) && m.target && m.formula);
  const target = mix?.target && labOfCss(mix.target.css);
  if (!mix?.formula || !target) return [];
  const layer = layerOfMix(plan, mix.name);
  const proposal = propose(study, {
    target,
    layer,
    area: layer?.areas[0] ?? plan.areas[0]?.name ?? 'everything',
    within: mix.within?.value.likely,
  });
  const formula = mix.formula;
  return (proposal?.recipes ?? []).slice(0, 3).map((r) => ({
    kind: 'refactor.rewrite',
    fix: {
      title: `Propose proportions: ${partsWords(r.parts)} (predicted ΔE00 ${r.deltaE00.toFixed(1)})`,
      edits: [{ place: formula.place, text: partsWords(r.parts) }],
    },
  }));
}

/** Whatever fits the place; nothing that would change the order of layers or parts. */
export function rewrites(plan: Plan, study: Study, text: string, offset: number): Rewrite[] {
  const rewrites: (Rewrite | undefined)[] = [];
  const layer = plan.layers.find((l) => inside(l.place, offset));
  const own = layer?.colour?.kind === 'formula' ? layer.colour.formula : undefined;
  if (layer && own && inside(own.place, offset))
    rewrites.push(extract(plan, text, layer, own), inline(text, own, offset));
  const formulas = [
    own,
    ...plan.paints.map((p) => p.formula),
    ...plan.mediums.map((m) => m.formula),
    ...plan.mixes.map((m) => m.formula),
  ];
  const here = formulas.find((f) => f && inside(f.place, offset));
  if (here) rewrites.push(convert(text, here));
  if (layer && (inside(layer.namePlace, offset) || inside(layer.kindPlace, offset)))
    rewrites.push(split(text, layer), recorded(text, layer));
  return [...rewrites.filter((r) => r !== undefined), ...proposals(plan, study, offset)];
}
