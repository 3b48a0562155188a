import type { Fix, Formula, Ingredient, Layer, Part } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import { colourWith, compositionOf } from '../../study/what-if.ts';
import type { Rule } from '../rule.ts';
import { type FilmStudy, isFilm, shareOfPigment } from '../shared/beneath.ts';
import { replace } from '../shared/fixes.ts';
import { mainly } from '../shared/instead.ts';
import { isClear, isOpaqueWhite, withoutParts } from '../shared/pigments.ts';
import { modellingKept } from '../shared/seen.ts';
import { figure, labelAtStart, listed, percent, practice, quoted } from '../shared/words.ts';

/** Share of the pigment by volume from which a white is more than a trace. */
const TRACE = 0.02;
/** Share of a word of a formula that is opaque white, by the amounts written; `known` are formulas already looked at. */
function whiteness({ is }: Ingredient, known = new Map<Formula, number>()): number {
  if (is.kind === 'pigment') return isOpaqueWhite(is.pigment) ? 1 : 0;
  const formula = is.kind === 'paint' ? is.paint.formula : is.kind === 'mix' ? is.mix.formula : undefined;
  if (!formula) return 0;
  const remembered = known.get(formula);
  if (remembered !== undefined) return remembered;
  // a mix that contains itself has no share of its own to tell
  known.set(formula, 0);
  const amount = (p: Part): number => Math.max(0, p.amount?.value ?? 1);
  const all = formula.parts.reduce((s, p) => s + amount(p), 0);
  const white = formula.parts.reduce((s, p) => s + amount(p) * whiteness(p.ingredient, known), 0);
  const share = all > 0 ? white / all : 0;
  known.set(formula, share);
  return share;
}

/** The layer with its whites left out, and which they are; nothing where nothing would stay, or white would. */
function without(layer: Layer): { readonly layer: Layer; readonly out: readonly Part[] } | undefined {
  if (layer.colour?.kind !== 'formula') return undefined;
  const { formula } = layer.colour;
  const out = formula.parts.filter((p) => whiteness(p.ingredient) >= 0.5);
  const parts = formula.parts.filter((p) => !out.includes(p));
  if (out.length === 0 || parts.length === 0) return undefined;
  const clear: Layer = { ...layer, colour: { kind: 'formula', formula: { ...formula, parts } } };
  const left = compositionOf(clear);
  return left && shareOfPigment(left, isOpaqueWhite) < TRACE ? { layer: clear, out } : undefined;
}

/** What the white does to the colour, in words; nothing where it cannot be predicted. */
function loss(study: Study, film: FilmStudy, clear: Layer): string {
  const area = film.areas[0];
  if (area === undefined) return '';
  const now = film.colours().find((c) => c.area === area)?.lab;
  const then = colourWith(study, clear, area)?.lab;
  if (!now || !then) return '';
  const chroma = (lab: readonly [number, number, number]) => Math.hypot(lab[1], lab[2]);
  const [lost, lighter] = [chroma(then) - chroma(now), now[0] - then[0]];
  const kept = modellingKept(study, area, film.layer) ?? 0;
  const could = modellingKept(study, area, clear) ?? 0;
  const said = [
    ...(lost > 1 ? [`${figure(lost)} less chroma`] : []),
    ...(lighter > 1 ? [`${figure(lighter)} lighter in L*`] : []),
    ...(could - kept > 0.05
      ? [`${percent(kept)} instead of ${percent(could)} of the light and dark beneath`]
      : []),
  ];
  const where = study.plan.implicitArea ? '' : ` on ${quoted(area)}`;
  return said.length > 0 ? ` Predicted${where} with the white, against without: ${listed(said)}.` : '';
}

function fixes(layer: Layer, clear: ReturnType<typeof without>): Fix[] {
  const scumble = replace('Make it a scumble', layer.kindPlace, 'scumble');
  const edits =
    clear && layer.colour?.kind === 'formula' ? withoutParts(layer.colour.formula, clear.out) : undefined;
  if (!clear || !edits) return [scumble];
  return [{ title: `Leave ${listed(clear.out.map((p) => p.ingredient.name))} out`, edits }, scumble];
}

/** An opaque white in a layer that is called a glaze. */
export const opaqueWhiteInGlaze: Rule = {
  id: 'opaque-white-in-glaze',
  title: 'Opaque white in a glaze',
  theme: 'glazes',
  severity: 'warning',
  why: 'A glaze works because light goes through it and back. An opaque white scatters the light before it gets there: the layer turns milky and cool, and hides what it should let shine.',
  whatToDo: 'Leave the white out, or call the layer a scumble and use it as one: lighter over darker.',
  sources: [practice('glazes are mixed from transparent colours; with white they are scumbles')],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (l.layer.kind !== 'glaze' || !isFilm(l)) return;
    const share = shareOfPigment(l.composition, isOpaqueWhite);
    if (share < TRACE) return;
    const whites = l.composition.pigments
      .filter((p) => isOpaqueWhite(p.pigment))
      .map((p) => quoted(p.pigment.id));
    const clear = without(l.layer);
    yield {
      message: `${labelAtStart(l.layer)} holds the opaque white ${listed([...new Set(whites)])}, ${percent(share)} of its pigment by volume: it will turn milky and hide what lies below.${clear ? loss(others(), l, clear.layer) : ''} Leave the white out, or make it a scumble.`,
      place: l.layer.colour?.kind === 'formula' ? l.layer.colour.formula.place : l.layer.namePlace,
      layer: l.layer.index,
      objection: mainly(l.composition, isOpaqueWhite, isClear),
      fixes: fixes(l.layer, clear),
    };
  },
};
