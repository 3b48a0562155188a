import type { Pigment } from '../../materials/types.ts';
import type { LayerStudy, PermanenceEntry, Study } from '../../results/study.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { lasts, RANK } from '../shared/instead.ts';
import { pigmentName, pigmentPlace, whereUsed } from '../shared/pigments.ts';
import { figure, label, memory, ours, quoted, span } from '../shared/words.ts';

/** µm of all coats together up to which a film counts as thin: no body of pigment stands behind its face. */
const THIN = 15;

/** Lakes and vegetable colours that old practice calls fugitive and no list classes. */
const FADING = ['NR4', 'NY20', 'NY24', 'NB1', 'PR39'];

/** Class III to V, told to be fugitive, or known as such. */
function fugitive(pigment: Pigment): boolean {
  const { lightfastness, lightfastnessNote, code } = pigment;
  if (lightfastness) return (RANK[lightfastness.value] ?? 0) >= 3;
  return (
    /fugitive|fades/.test(lightfastnessNote?.value ?? '') || (code !== undefined && FADING.includes(code))
  );
}

/** Years to a first change by layer and pigment, in words. */
function yearsOf(study: Study): (layer: LayerStudy, pigment: Pigment) => string {
  let known: ReadonlyMap<string, PermanenceEntry> | undefined;
  return (layer, pigment) => {
    known ??= new Map(study.permanence.filter((p) => p.years).map((p) => [`${p.index} ${p.pigment.id}`, p]));
    const entry = known.get(`${layer.layer.index} ${pigment.id}`);
    if (!entry?.years || !(entry.years.high < 1e4)) return '';
    const memory = entry.source.mark === 'memory' ? ', from memory' : '';
    return ` A first change may show after ${span(entry.years, 'years')} in the light of this plan (an estimate${memory}).`;
  };
}

/** Pigments that light takes, first where they lie thinnest. */
export const fugitivePigment: Rule = {
  id: 'fugitive-pigment',
  title: 'Colour that light takes',
  theme: 'lasting',
  severity: 'warning',
  why: 'Some colours fade within a generation. A thin glaze of one is lost first, because nothing of it stands behind its face, and what it was laid over comes through in another hue.',
  whatToDo:
    'Choose a pigment of class I or II of the same hue, keep it for body colour, or keep the picture out of strong light.',
  sources: [
    memory('ASTM D4302, lightfastness classes of pigments in oil'),
    memory('that madder, cochineal, buckthorn and indigo fade, and that realgar turns, old practice tells'),
    ours('films up to 15 µm count as thin'),
  ],
  restsOn: [],
  appliesTo: ['plan', 'record'],
  *check(plan, study): Iterable<RuleReport> {
    const years = yearsOf(study);
    for (const [pigment, layers] of whereUsed(study, fugitive)) {
      const rank = RANK[pigment.lightfastness?.value ?? ''] ?? 4;
      const said = pigment.lightfastness
        ? `lightfastness ${pigment.lightfastness.value} in oil`
        : 'not classed, known to fade';
      for (const layer of layers) {
        const film = layer.dryFilm?.likely;
        const thin = film !== undefined && film <= THIN;
        const firm = plan.kind === 'plan' && (thin || rank > 3);
        const where = thin
          ? ` and lies thin in ${label(layer.layer)} (${figure(film)} µm), where fading shows first`
          : ` in ${label(layer.layer)}`;
        yield {
          message: `${pigmentName(pigment)} is ${said}${where}.${years(layer, pigment)}${plan.kind === 'plan' ? ' Choose a lasting pigment of that hue, or keep the picture from strong light.' : ` What ${quoted(layer.layer.name)} shows today may be less than was painted.`}`,
          place: pigmentPlace(layer.layer, (p) => p === pigment),
          severity: firm ? 'warning' : 'info',
          layer: layer.layer.index,
          ...(plan.kind === 'plan'
            ? {
                objection: { pigment, everywhere: true, otherwise: lasts },
              }
            : {}),
        };
      }
    }
  },
};
