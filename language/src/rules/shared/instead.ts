/** What to take instead of a pigment a rule objects to: the nearest by colour in that place, and what is lost with it. */
import { allPigments } from '../../materials/catalogue.ts';
import type { Hazard, Pigment } from '../../materials/types.ts';
import { layerPigments } from '../../permanence/pigments.ts';
import type { Fix, Formula, Ingredient, Layer, Place, Plan } from '../../plan/plan.ts';
import type { Composition, LayerStudy, Study } from '../../results/study.ts';
import { isSold, standIns } from '../../study/stand-in.ts';
import { formulaOf, pigmentsOf } from './pigments.ts';
import { POISONOUS_DUST } from './prepare.ts';
import { figure } from './words.ts';

/** A pigment a rule objects to, and which it would not object to. */
export interface Objection {
  readonly pigment: Pigment;
  readonly otherwise: (pigment: Pigment) => boolean;
  /** wherever it lies: the paint is to be another, not only what this layer is mixed of */
  readonly everywhere?: true;
  /** in a picture of the past: it need not be sold today, and what was painted is not exchanged */
  readonly past?: true;
}

/** Of the pigments of a film that are objected to the one there is most of; `otherwise`: all that are not, unless said. */
export function mainly(
  { pigments }: Composition,
  objectedTo: (pigment: Pigment) => boolean,
  otherwise = (p: Pigment): boolean => !objectedTo(p),
): Objection | undefined {
  const [most] = pigments
    .filter((p) => objectedTo(p.pigment))
    .sort((a, b) => b.volumeFraction.likely - a.volumeFraction.likely);
  return most && { pigment: most.pigment, otherwise };
}

/** A pigment to take instead; ΔE00 and its radius are of the colour in that place. */
export interface Alternative extends Instead {
  readonly fix: Fix;
}

/** The same in words and figures alone. */
export interface Instead {
  readonly pigment: string;
  readonly name: string;
  readonly deltaE00: number;
  readonly radius: number;
  /** what is lost with it: `slower`, `hides less` … */
  readonly loses: readonly string[];
}

/** White stands in for white alone: in much of another colour it would look near, and be only left out. */
const isWhite = ({ code }: Pigment): boolean => code?.startsWith('PW') === true;

/** Beyond this ΔE00 it is another colour, and nothing is proposed. */
const FURTHEST = 20;

const DEEPEST = 50;
const NOBODY = -1;

const inUse = new WeakMap<Plan, ReadonlyMap<Formula, number>>();

/** Formulas of paints and mixes by the only layer that uses them; −1 where several do. */
function usedBy(plan: Plan): ReadonlyMap<Formula, number> {
  const known = inUse.get(plan);
  if (known) return known;
  const by = new Map<Formula, number>();
  for (const { colour, index } of plan.layers) {
    if (colour?.kind !== 'formula') continue;
    const opened = new Set([colour.formula]);
    for (const { parts } of opened)
      for (const { ingredient } of parts) {
        const inner = formulaOf(ingredient);
        if (!inner || opened.has(inner)) continue;
        opened.add(inner);
        by.set(inner, (by.get(inner) ?? index) === index ? index : NOBODY);
      }
  }
  inUse.set(plan, by);
  return by;
}

/** What is to be changed so that layers hold another pigment. */
interface Change {
  readonly words: ReadonlySet<Ingredient>;
  /** oil stated of tubes that are exchanged: it was theirs */
  readonly oils: readonly Place[];
}
const NO_CHANGE: Change = { words: new Set(), oils: [] };

const changes = new WeakMap<Plan, Map<string, Change>>();

/**
 * The words to change so that a layer, or every layer, holds another pigment: where the pigment is named, or the word of a
 * tube of it that other layers or files use too. None where what others use would change.
 */
function changeFor(plan: Plan, layer: Layer, pigment: Pigment, everywhere: boolean): Change {
  const known = changes.get(plan) ?? new Map<string, Change>();
  changes.set(plan, known);
  const key = `${everywhere ? '' : layer.index} ${pigment.id}`;
  const roots = (everywhere ? plan.layers : [layer]).flatMap(({ colour }) =>
    colour?.kind === 'formula' ? [colour.formula] : [],
  );
  const ours = (inner: Formula): boolean =>
    inner.place.uri === plan.uri && (everywhere || usedBy(plan).get(inner) === layer.index);
  const made = known.get(key) ?? changeIn(plan, roots, pigment, ours);
  known.set(key, made);
  return made;
}

function changeIn(
  plan: Plan,
  roots: readonly Formula[],
  pigment: Pigment,
  ours: (inner: Formula) => boolean,
): Change {
  const words = new Set<Ingredient>();
  const oils: Place[] = [];
  const opened = new Map(roots.map((r) => [r, 0]));
  for (const [formula, depth] of opened)
    for (const { ingredient } of formula.parts) {
      if (!pigmentsOf(ingredient).includes(pigment)) continue;
      const { is } = ingredient;
      const inner = formulaOf(ingredient);
      if (!inner) words.add(ingredient);
      else if (ours(inner)) {
        if (depth >= DEEPEST) return NO_CHANGE;
        if (opened.has(inner)) continue;
        opened.set(inner, depth + 1);
        if (is.kind === 'paint' && is.paint.oil) oils.push(oilClause(plan, is.paint.oil.place));
      } else if (is.kind === 'paint' && inner.parts.length === 1) words.add(ingredient);
      else return NO_CHANGE;
    }
  return { words, oils };
}

/** ` 30 % oil`, of which the place holds the figure. */
function oilClause(plan: Plan, { uri, start, end }: Place): Place {
  const { text = '' } = plan;
  const word = /^\s*oil/.exec(text.slice(end, end + 100))?.[0].length ?? 0;
  const space = /\s*$/.exec(text.slice(Math.max(0, start - 100), start))?.[0].length ?? 0;
  return { uri, start: start - space, end: end + word };
}

const CLEAR = ['transparent', 'semi-transparent', 'semi-opaque', 'opaque'];
const QUICK = ['strong drier', 'drier', 'neutral', 'retarder', 'strong retarder'];
const LASTING = ['I', 'II', 'III', 'IV', 'V'];
/** Dust of these harms lungs, skin or nerves. */
const HARMFUL: readonly Hazard[] = ['cobalt', 'nickel', 'manganese', 'barium'];
const POISON: readonly Hazard[] = [...POISONOUS_DUST, 'antimony', 'toxic-if-swallowed'];
/** Share of the dry film by volume that must be oil instead of pigment before it is told. */
const MORE_OIL = 0.05;

/** Classes of lightfastness in order, the most lasting 1. */
export const RANK: Readonly<Record<string, number>> = { I: 1, II: 2, III: 3, IV: 4, V: 5 };

/** Classed I or II, and no handbook says that it fades: what is not known to last is no help against fading. */
export const lasts = ({ lightfastness, lightfastnessNote, incompatibilities }: Pigment): boolean =>
  (RANK[lightfastness?.value ?? ''] ?? 5) <= 2 &&
  !/fugitive|fade/.test(`${lightfastnessNote?.value ?? ''} ${incompatibilities?.value ?? ''}`);

export const isPoisonous = ({ hazards }: Pigment): boolean => hazards.some((h) => POISON.includes(h));

/** What a painter gives up with `to` in place of `of`, each in a word or two; `less`: pigment in the film, by volume. */
export function losses(of: Pigment, to: Pigment, kind: Layer['kind'], less: number): string[] {
  const steps = (scale: readonly string[], from: string | undefined, then: string | undefined): number =>
    from === undefined || then === undefined ? 0 : scale.indexOf(then) - scale.indexOf(from);
  const clear = steps(CLEAR, of.transparency.value, to.transparency.value);
  const fresh = (hazards: readonly Hazard[]): Hazard[] =>
    to.hazards.filter((h) => hazards.includes(h) && !of.hazards.includes(h));
  const [poison, harmful] = [fresh(POISON), fresh(HARMFUL)];
  return [
    ...(kind === 'glaze' ? (clear > 0 ? ['less transparent'] : []) : clear < 0 ? ['hides less'] : []),
    ...(steps(QUICK, of.drying.value, to.drying.value) > 0 ? ['slower'] : []),
    ...(less >= MORE_OIL ? ['more oil'] : []),
    ...(steps(LASTING, of.lightfastness?.value ?? 'V', to.lightfastness?.value ?? 'V') > 0
      ? ['less lasting']
      : []),
    ...(poison.length > 0
      ? [`poisonous (${poison.join(', ')})`]
      : harmful.length > 0
        ? [`harmful dust (${harmful.join(', ')})`]
        : []),
  ];
}

/** `ΔE00 3.2, slower`; with the radius where the difference is lost in it. */
function costs({ deltaE00, radius, loses }: Instead): string {
  const unsure = radius > deltaE00 ? ` (may be off by ${figure(radius)})` : '';
  return [`ΔE00 ${figure(deltaE00)}${unsure}`, ...loses].join(', ');
}

const both = ({ pigment, name }: Instead): string => (pigment === name ? name : `${pigment} (${name})`);

/** What the fix is called. */
export const takeInstead = (by: Instead): string => `Take ${both(by)} instead: ${costs(by)}`;

/**
 * Every pigment that can be bought and would not be objected to, the nearest first; made one by one. `index`: the layer it
 * is objected to in, the first that holds it where that is not said.
 */
export function* alternatives(
  study: Study,
  { pigment, otherwise, everywhere, past }: Objection,
  index?: number,
): Generator<Alternative> {
  const { plan } = study;
  const holds = (l: LayerStudy): boolean => layerPigments(l).some((p) => p.pigment === pigment);
  const layer = (index === undefined ? study.layers.find(holds) : study.layers[index])?.layer;
  if (!layer) return;
  const { words, oils } = changeFor(plan, layer, pigment, everywhere === true);
  if (words.size === 0) return;
  const may = allPigments().filter(
    (p) => p !== pigment && isWhite(p) === isWhite(pigment) && (past || isSold(p)) && otherwise(p),
  );
  for (const by of standIns(study, layer, words, may)) {
    if (by.deltaE00 > FURTHEST) return;
    const { id } = by.pigment;
    const told = {
      pigment: id,
      name: by.pigment.names[0] ?? id,
      deltaE00: by.deltaE00,
      radius: by.radius,
      loses: losses(pigment, by.pigment, layer.kind, by.pvcBefore - by.pvc),
    };
    const edits = [
      ...[...words].map(({ place, variety }) => ({
        place: { ...place, end: variety?.place.end ?? place.end },
        text: id,
      })),
      ...oils.map((place) => ({ place, text: '' })),
    ];
    yield { ...told, fix: { title: takeInstead(told), edits } };
  }
}

/** ` Nearest without that: PR177 (anthraquinone red), ΔE00 3.2; PV19 red (quinacridone red), ΔE00 4, slower.` */
export const insteadWords = (found: readonly Instead[]): string =>
  found.length === 0
    ? ''
    : ` Nearest without that: ${found.map((by) => `${both(by)}, ${costs(by)}`).join('; ')}.`;
