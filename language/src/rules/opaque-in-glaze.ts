import { isFilm, shareOfPigment } from './beneath.ts';
import { replace } from './fixes.ts';
import type { Rule } from './rule.ts';
import { Called, listed, percent, practice, quoted } from './words.ts';

const isWhite = (code: string | undefined) => code !== undefined && /^PW[1456]$/.test(code);

/** Opaque or semi-opaque colours in a glaze; whites have a rule of their own. */
export const opaqueInGlaze: Rule = {
  id: 'opaque-in-glaze',
  title: 'Opaque colour in a glaze',
  severity: 'warning',
  why: 'An opaque pigment hides what lies below however much medium thins it; the depth that a glaze is laid for does not come.',
  whatToDo: 'Use a transparent pigment of the same hue, or call the layer a scumble.',
  sources: [practice('transparency classes as the trade prints them; marks stand with each pigment')],
  appliesTo: ['plan'],
  *check(_plan, study) {
    for (const l of study.layers) {
      if (l.layer.kind !== 'glaze' || !isFilm(l)) continue;
      for (const kind of ['opaque', 'semi-opaque'] as const) {
        const found = l.composition.pigments.filter(
          (p) => p.pigment.transparency.value === kind && !isWhite(p.pigment.code),
        );
        const share = shareOfPigment(l.composition, (p) => p.transparency.value === kind && !isWhite(p.code));
        if (found.length === 0 || share < (kind === 'opaque' ? 0.05 : 0.2)) continue;
        yield {
          message: `${Called(l.layer)} holds ${listed(found.map((p) => quoted(p.pigment.id)))}, ${kind}, ${percent(share)} of its pigment by volume: it will ${kind === 'opaque' ? 'hide' : 'veil'} what lies below. Use a transparent pigment, or make it a scumble.`,
          place: l.layer.colour?.kind === 'formula' ? l.layer.colour.formula.place : l.layer.namePlace,
          layer: l.layer.index,
          severity: kind === 'opaque' ? 'warning' : 'info',
          fixes: [replace('Make it a scumble', l.layer.kindPlace, 'scumble')],
        };
      }
    }
  },
};
