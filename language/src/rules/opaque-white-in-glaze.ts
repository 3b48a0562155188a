import type { Fix, Formula, Layer } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { colourWith } from '../study/what-if.ts';
import { type Film, isFilm, shareOfPigment } from './beneath.ts';
import { replace } from './fixes.ts';
import type { Rule } from './rule.ts';
import { Called, figure, listed, percent, practice, quoted } from './words.ts';

const isWhite = (code: string | undefined): boolean => code !== undefined && ['PW1', 'PW4', 'PW5', 'PW6'].includes(code);

/** The formula's own words that bring the white in, where leaving them out leaves something. */
function whites(formula: Formula): Formula['parts'] {
  return formula.parts.filter(({ ingredient: { is } }) => {
    if (is.kind === 'pigment') return isWhite(is.pigment.code);
    return is.kind === 'paint' && (is.paint.formula?.parts ?? []).every((p) => p.ingredient.is.kind === 'pigment' && isWhite(p.ingredient.is.pigment.code));
  });
}

function without(layer: Layer): Layer | undefined {
  if (layer.colour?.kind !== 'formula') return undefined;
  const out = whites(layer.colour.formula);
  const parts = layer.colour.formula.parts.filter((p) => !out.includes(p));
  return out.length > 0 && parts.length > 0 ? { ...layer, colour: { kind: 'formula', formula: { ...layer.colour.formula, parts } } } : undefined;
}

/** What the white does to the colour, in words; nothing where it cannot be predicted. */
function loss(study: Study, film: Film): string {
  const clear = without(film.layer);
  const area = film.areas[0];
  if (!clear || area === undefined) return '';
  const [now, then] = [film.colours().find((c) => c.area === area)?.lab, colourWith(study, clear, area)?.lab];
  if (!now || !then) return '';
  const chroma = (lab: readonly [number, number, number]) => Math.hypot(lab[1], lab[2]);
  const [lost, lighter] = [chroma(then) - chroma(now), now[0] - then[0]];
  const said = [lost > 1 && `${figure(lost)} less chroma`, lighter > 1 && `${figure(lighter)} lighter in L*`].filter((x) => typeof x === 'string');
  return said.length > 0 ? ` Predicted on ${area}: ${listed(said)} than without it.` : '';
}

function fixes(layer: Layer): Fix[] {
  const found: Fix[] = [replace('Make it a scumble', layer.kindPlace, 'scumble')];
  if (layer.colour?.kind !== 'formula') return found;
  const { parts } = layer.colour.formula;
  const white = whites(layer.colour.formula)[0];
  const clear = without(layer);
  if (white && clear) {
    const i = parts.indexOf(white);
    const [from, to] = i > 0 ? [parts[i - 1]?.place.end, white.place.end] : [white.place.start, parts[1]?.place.start];
    if (from !== undefined && to !== undefined) found.unshift({ title: `Leave ${white.ingredient.name} out`, edits: [{ place: { ...white.place, start: from, end: to }, text: '' }] });
  }
  return found;
}

/** An opaque white in a layer that is called a glaze. */
export const opaqueWhiteInGlaze: Rule = {
  id: 'opaque-white-in-glaze',
  title: 'Opaque white in a glaze',
  severity: 'warning',
  why: 'A glaze works because light goes through it and back. An opaque white scatters the light before it gets there: the layer turns milky and cool, and hides what it should let shine.',
  whatToDo: 'Leave the white out, or call the layer a scumble and use it as one: lighter over darker.',
  sources: [practice('glazes are mixed from transparent colours; with white they are scumbles')],
  appliesTo: ['plan'],
  *check(_plan, study) {
    for (const l of study.layers) {
      if (l.layer.kind !== 'glaze' || !isFilm(l)) continue;
      const share = shareOfPigment(l.composition, (p) => isWhite(p.code));
      if (share < 0.02) continue;
      const names = [...new Set(l.composition.pigments.filter((p) => isWhite(p.pigment.code)).map((p) => quoted(p.pigment.id)))];
      yield {
        message: `${Called(l.layer)} holds the opaque white ${listed(names)}, ${percent(share)} of its pigment by volume: it will turn milky and hide what lies below.${loss(study, l)} Leave the white out, or make it a scumble.`,
        place: l.layer.colour?.kind === 'formula' ? l.layer.colour.formula.place : l.layer.namePlace,
        layer: l.layer.index,
        fixes: fixes(l.layer),
      };
    }
  },
};
