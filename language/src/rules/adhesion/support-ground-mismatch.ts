import type { GroundMaterial, Support } from '../../materials/types.ts';
import type { Plan } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { isOily } from '../shared/films.ts';
import { layerOnSupport } from '../shared/fixes.ts';
import { labelAtStart, practice, quoted } from '../shared/words.ts';

const isPlaster = (g: GroundMaterial): boolean => g.id.endsWith('plaster');
const isStiff = (g: GroundMaterial): boolean => (g.kind === 'glue' || g.kind === 'emulsion') && !g.flexible;

/** What is wrong with a ground on a support, `on` being both in the painter's words: how firmly, and why. */
function mismatch(
  ground: GroundMaterial,
  support: Support,
  on: string,
): Pick<RuleReport, 'message' | 'severity'> | undefined {
  if (isPlaster(ground) && support.kind !== 'wall')
    return {
      severity: 'warning',
      message: `${on} is a ground for walls: on anything that moves it comes off. Take a ground made for the support.`,
    };
  if (isStiff(ground) && support.kind === 'flexible')
    return ground.kind === 'emulsion'
      ? {
          severity: 'info',
          message: `${on} bends only a little: keep it thin, and the canvas well stretched and out of damp; an acrylic or oil ground bends better.`,
        }
      : {
          severity: 'warning',
          message: `${on} is stiff and brittle: it cracks as the canvas moves. Glue it to a panel, or take an acrylic or oil ground.`,
        };
  if (isStiff(ground) && (support.kind === 'metal' || support.id === 'glass'))
    return {
      severity: 'warning',
      message: `${on} finds no hold on a closed surface and flakes off. Roughen it and ground it in oil or alkyd.`,
    };
  if (ground.kind === 'acrylic' && support.kind === 'metal')
    return {
      severity: 'info',
      message: `${on} holds only where the metal is clean of grease and roughened, better on a primer made for it.`,
    };
  return undefined;
}

/** The lowest layer of each area, once. */
function lowest(study: Study): LayerStudy[] {
  const bare = new Set(study.areas.map((a) => a.name));
  const first: LayerStudy[] = [];
  for (const l of study.layers) {
    if (bare.size === 0) break;
    if (l.layer.kind === 'drawing') continue;
    let lowest = false;
    for (const a of l.areas) lowest = bare.delete(a) || lowest;
    if (lowest) first.push(l);
  }
  return first;
}

function* oilOnFibres(plan: Plan, study: Study, support: Support): Generator<RuleReport> {
  if (!support.wantsSize) return;
  // in the painter's word, which may be an alias
  const called = quoted(plan.support?.material?.name ?? support.id);
  for (const l of lowest(study)) {
    if (!isOily(l) || l.layer.kind === 'varnish') continue;
    const place = l.layer.namePlace;
    const layer = l.layer.index;
    if (l.layer.kind !== 'ground' && !study.layers.some((x) => ['ground', 'size'].includes(x.layer.kind))) {
      yield {
        severity: 'info',
        place,
        layer,
        message: `The plan names no ground on ${called}: if it is bought primed, say with what, so that its colour and its drying count.`,
        fixes: layerOnSupport(plan, 'Say it has an acrylic ground', 'ground', 'priming', 'acrylic'),
      };
      return;
    }
    // what is bought primed with oil was sized by whoever primed it
    const bought = l.layer.kind === 'ground' && l.layer.material !== undefined;
    const fibres = support.kind === 'flexible' || support.kind === 'paper';
    yield {
      severity: fibres && !bought ? 'warning' : 'info',
      place,
      layer,
      message: `${labelAtStart(l.layer)} brings oil onto bare ${called}: ${fibres ? 'the oil eats the fibres and makes them brittle' : 'the support drinks the oil and leaves it lean'}. Size it first${bought ? ', or say so in a note if it came primed' : ''}.`,
      fixes: layerOnSupport(plan, 'Size the support with glue', 'size', 'sizing', 'glue'),
    };
  }
}

/** A ground the support cannot carry, or oil on bare fibres. */
export const supportGroundMismatch: Rule = {
  id: 'support-ground-mismatch',
  title: 'Ground and support do not go together',
  theme: 'adhesion',
  severity: 'warning',
  why: 'A stiff glue ground cracks on canvas, a water-borne one lets go of metal, and oil on bare fibres makes them brittle. All the painting hangs on this one joint.',
  whatToDo:
    'Chalk and glue on panels; acrylic or oil on sized canvas; oil or alkyd on roughened metal; size before any oil.',
  sources: [practice('which ground goes on which support, and size between fibres and oil')],
  restsOn: [],
  appliesTo: ['plan'],
  *check(plan, study) {
    const support = plan.support?.material?.is;
    if (!support) return;
    yield* oilOnFibres(plan, study, support);
  },
  *checkLayer({ layer }, _others, { support }) {
    const ground = layer.material?.is;
    if (!ground || layer.kind !== 'ground' || !support?.material?.is) return;
    const on = [layer.material, support.material].map((m) => quoted(m?.name ?? '')).join(' on ');
    const said = mismatch(ground, support.material.is, on);
    if (said) yield { ...said, place: layer.material?.place ?? layer.namePlace, layer: layer.index };
  },
};
