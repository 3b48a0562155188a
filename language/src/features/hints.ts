/** Words of the tool between the words of the plan: defaults taken, fatness, volume, distance to a target. */
import { exactly } from '../materials/interval.ts';
import { BEYOND_SRGB, parseColour, screenWords } from '../optics/css.ts';
import { deltaE00 } from '../optics/difference.ts';
import type { Plan } from '../plan/plan.ts';
import type { Study } from '../results/study.ts';
import { amount, fatness } from './figures.ts';

export type HintKind = 'defaults' | 'fatness' | 'volume' | 'target';

export interface Hint {
  readonly offset: number;
  readonly text: string;
  readonly tooltip: string;
  readonly kind: HintKind;
}

const DEFAULTS: readonly string[] = ['film', 'coats', 'medium'];

/** `coloured` false leaves out what needs predicted colours. */
export function hints(plan: Plan, study: Study, coloured: boolean): Hint[] {
  const hints: Hint[] = [];
  const millilitres = new Map<string, number>();
  for (const s of study.quantities?.sessions ?? []) {
    const ml = s.paints.reduce((sum, p) => sum + p.ml.likely, 0) + (s.medium?.ml.likely ?? 0);
    millilitres.set(s.layer, (millilitres.get(s.layer) ?? 0) + ml);
  }
  for (const l of study.layers) {
    const { layer, composition } = l;
    const at = layer.namePlace.end;
    if (composition)
      hints.push({
        offset: at,
        text: ` fatness ${fatness(composition.fatness)}`,
        tooltip:
          'How much more binder the dried film holds than its pigments need: 0 just bound, 100 pure binder.',
        kind: 'fatness',
      });
    const taken = l.assumptions.filter(
      (a) => DEFAULTS.includes(a.field) && !layer.fields.some((f) => f.name === a.field),
    );
    if (taken.length > 0)
      hints.push({
        offset: at,
        text: ` ${taken.map((a) => `${a.field} ${a.value}`).join(', ')}`,
        tooltip: taken.map((a) => `${a.field} ${a.value}: ${a.why}`).join('\n'),
        kind: 'defaults',
      });
    const solved = layer.film?.effect && l.assumptions.find((a) => a.field === 'film');
    if (layer.film && solved)
      hints.push({
        offset: layer.film.place.end,
        text: ` ${solved.value}`,
        tooltip: `film ${solved.value}: ${solved.why}`,
        kind: 'defaults',
      });
    const ml = millilitres.get(layer.name);
    if (ml !== undefined && ml > 0)
      hints.push({
        offset: at,
        text: ` ${amount(exactly(ml), 'ml')}`,
        tooltip: 'Paint and medium to mix for all coats, with a quarter more for waste.',
        kind: 'volume',
      });
  }
  if (!coloured) return hints;
  for (const t of plan.targets) {
    const area = study.areas.find((a) => a.name === t.in?.areas[0])?.target();
    if (area?.deltaE00 !== undefined)
      hints.push({
        offset: t.place.end,
        text: ` predicted ΔE00 ${area.deltaE00.toFixed(1)}`,
        tooltip: 'Distance of the predicted colour from this target, CIEDE2000.',
        kind: 'target',
      });
  }
  for (const l of study.layers)
    for (const m of l.layer.measured) {
      const lab = parseColour(m.colour.css);
      const colour = l.colours().find((c) => !m.in || m.in.areas.includes(c.area));
      if (lab && colour)
        hints.push({
          offset: m.place.end,
          text: ` ΔE00 ${deltaE00(lab, colour.lab).toFixed(1)} from predicted`,
          tooltip: `Predicted ${screenWords(colour)} ± ${colour.radius.toFixed(1)}.${colour.outOfGamut ? ` ${BEYOND_SRGB}` : ''}`,
          kind: 'target',
        });
    }
  return hints;
}
