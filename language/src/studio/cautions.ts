/**
 * The cautions a plan calls for, each once, with where it holds: by what the paints hold, by what is done, by what
 * evaporates, and those that hold always. Texts and sources are the catalogue's; the line that defers to data sheets
 * and local codes is `deferringLine` there, printed once under them all.
 */
import { binder, solvent } from '../materials/catalogue.ts';
import { type Caution, type Step, solventCaution, stepCaution } from '../materials/cautions.ts';
import type { Binder, Hazard, Pigment, Solvent } from '../materials/types.ts';
import { formulaPigments } from '../permanence/pigments.ts';
import type { Layer, Plan } from '../plan/plan.ts';
import type { CautionEntry, LayerStudy } from '../results/study.ts';
import { LEAD_LIMIT_SOURCE, leadLimit } from './lead.ts';
import { type Powders, powders } from './powder.ts';
import { type LiquidMemo, liquidsOf } from './recipe.ts';
import type { Studied } from './surface.ts';
import { varnishLiquid } from './varnish.ts';

/** Hazards whose dust is poison: nothing that holds them is ever rubbed down. */
export const TOXIC_DUST: readonly Hazard[] = ['lead', 'cadmium', 'chromium-vi', 'arsenic', 'mercury'];

/** Cautions as they are met: each once, with every place it holds in, in the order of meeting. */
function collector() {
  const byHazard = new Map<string, { caution: Caution; where: Set<string> }>();
  return {
    add(hazard: string, caution: Caution | undefined, where: string): void {
      if (!caution) return;
      const known = byHazard.get(hazard);
      if (known) known.where.add(where);
      else byHazard.set(hazard, { caution, where: new Set([where]) });
    },
    entries: (): CautionEntry[] =>
      [...byHazard].map(([hazard, { caution, where }]) => ({ hazard, ...caution, where: [...where] })),
  };
}

type Collector = ReturnType<typeof collector>;

function byHazard(
  add: Collector['add'],
  study: Studied,
  pigments: ReadonlyMap<number, readonly Pigment[]>,
  caution: Powders['caution'],
): void {
  for (const { layer } of study.layers)
    for (const pigment of pigments.get(layer.index) ?? [])
      for (const hazard of pigment.hazards) add(hazard, caution(pigment, hazard), layer.name);
}

const toxic = (pigments: readonly Pigment[] | undefined): boolean =>
  pigments?.some((p) => p.hazards.some((h) => TOXIC_DUST.includes(h))) === true;

/** Rubbing down: the poison lies in the layer beneath, or in the coat before. */
function abrading(
  add: Collector['add'],
  layer: LayerStudy,
  pigments: ReadonlyMap<number, readonly Pigment[]>,
): void {
  if (!layer.layer.prepare.some((p) => p.method === 'abrade')) return;
  const below = [...layer.below.values()].flatMap((b) => (b[0] === undefined ? [] : [b[0]]));
  const rubbed = [...below, ...(layer.coats > 1 ? [layer.layer.index] : [])];
  if (rubbed.some((i) => toxic(pigments.get(i))))
    add('sanding-toxic', stepCaution('sanding-toxic'), layer.layer.name);
}

const DRYING: readonly Binder['kind'][] = ['drying oil', 'semi-drying oil', 'alkyd'];

function liquids(layer: Layer, memo: LiquidMemo): { binders: Binder[]; solvents: Solvent[] } {
  const binders: Binder[] = [];
  const solvents: Solvent[] = [];
  const named = (id: string | undefined) => {
    const solventOfId = id === undefined ? undefined : solvent(id);
    if (solventOfId) solvents.push(solventOfId);
  };
  for (const is of [layer.medium?.of?.is, ...layer.prepare.map((p) => p.agent?.is)]) {
    if (is?.kind === 'agent') for (const id of Object.keys(is.agent.solvents ?? {})) named(id);
    for (const { liquid } of liquidsOf(is, memo) ?? []) {
      if (liquid.kind === 'solvent') solvents.push(liquid.solvent);
      else {
        binders.push(liquid.binder);
        named(liquid.binder.carrier);
      }
    }
  }
  return { binders, solvents: solvents.filter((s) => !s.harmless) };
}

function byStep(
  add: Collector['add'],
  study: Studied,
  pigments: ReadonlyMap<number, readonly Pigment[]>,
): void {
  const memo: LiquidMemo = new Map();
  const step = (name: Step, where: string) => add(name, stepCaution(name), where);
  for (const layer of study.layers) {
    const { name } = layer.layer;
    abrading(add, layer, pigments);
    const { binders, solvents } = liquids(layer.layer, memo);
    const inFilm = (layer.composition?.binders ?? []).flatMap((b) => binder(b.binder) ?? []);
    if ([...binders, ...inFilm].some((b) => DRYING.includes(b.kind))) step('rags', name);
    if (binders.some((b) => b.kind === 'alkyd')) step('alkyd-medium', name);
    const inPaint = (layer.composition?.volatiles ?? []).flatMap((v) => solvent(v.solvent) ?? []);
    const varnish = varnishLiquid(layer)?.spirit;
    for (const s of new Set([...solvents, ...inPaint, ...(varnish ? [varnish] : [])])) {
      if (s.harmless) continue;
      step('any-solvent', name);
      add(s.id, solventCaution(s.id), name);
    }
  }
}

function always(add: Collector['add'], study: Studied, found: readonly CautionEntry[]): void {
  const whole = study.plan.title ?? 'the whole painting';
  const step = (name: Step) => add(name, stepCaution(name), whole);
  if (study.plan.kind === 'record') {
    step('old-paint');
    step('restoration');
    return;
  }
  if (study.layers.length === 0) return;
  const vulnerable = [...TOXIC_DUST, 'any-solvent'] as readonly string[];
  if (found.some((c) => vulnerable.includes(c.hazard))) step('vulnerable-people');
  step('waste');
}

/** A session longer than the eight hours a limit is told for lowers it. */
function longDay(entries: readonly CautionEntry[], plan: Plan): readonly CautionEntry[] {
  const hours = plan.studio.session?.value.high ?? 0;
  if (!(hours > 8) || !Number.isFinite(hours)) return entries;
  const limit = `For a session of ${Number(hours.toPrecision(3))} hours that is ${Number(leadLimit(hours).toPrecision(3))} µg/m³.`;
  return entries.map((c) =>
    c.hazard === 'lead' ? { ...c, text: `${c.text} ${limit}`, source: LEAD_LIMIT_SOURCE } : c,
  );
}

/** Cautions of a plan, a record or a palette, each once. Records are told of poisons and of letting be. */
export function cautions(study: Studied): readonly CautionEntry[] {
  const pigments = new Map(study.layers.map((l) => [l.layer.index, formulaPigments(l)] as const));
  const { add, entries } = collector();
  const dry = powders(study.plan);
  byHazard(add, study, pigments, dry.caution);
  if (study.plan.kind !== 'record') {
    byStep(add, study, pigments);
    for (const name of dry.names) add('dry-pigment', stepCaution('dry-pigment'), name);
  }
  always(add, study, entries());
  return longDay(entries(), study.plan);
}
