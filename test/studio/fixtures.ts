/** Plans and studies by hand, with nothing in them but what the studio reads. */
import { exactly, type Interval } from '../../language/src/materials/interval.ts';
import type { Layer, Measure, Place, Plan, Sample } from '../../language/src/plan/plan.ts';
import { unsaid } from '../../language/src/plan/unsaid.ts';
import type { Composition, LayerStudy, Study } from '../../language/src/results/study.ts';

export const place: Place = { uri: 'file:///made-up.paintplan', start: 0, end: 0 };

export const measure = (value: number | Interval, unit = '', given: Measure['given'] = 'exact'): Measure => {
  const interval = typeof value === 'number' ? exactly(value) : value;
  return {
    value: interval,
    given: interval.low === interval.high ? given : 'range',
    unit,
    words: `${interval.likely} ${unit}`.trim(),
    place,
  };
};

export const declared = (name: string) => ({ name, place, namePlace: place });

export const layer = (name: string, index: number, more: Partial<Layer> = {}): Layer => ({
  ...declared(name),
  kind: 'layer',
  index,
  kindPlace: place,
  everywhere: true,
  ...unsaid(),
  areas: ['everything'],
  ...more,
});

export const plan = (more: Partial<Plan> = {}): Plan => ({
  uri: place.uri,
  kind: 'plan',
  title: 'Made up for a test',
  studio: { fields: [] },
  support: { height: measure(50, 'cm'), width: measure(40, 'cm'), place },
  areas: [{ ...declared('everything'), share: measure(1) }],
  implicitArea: true,
  groups: [],
  pigments: [],
  paints: [],
  mediums: [],
  mixes: [],
  layers: [],
  targets: [],
  samples: [],
  notes: [],
  allows: [],
  uses: [],
  visible: { pigments: new Map(), paints: new Map(), mediums: new Map(), mixes: new Map() },
  clashes: [],
  problems: [],
  circles: [],
  names: [],
  ...more,
});

/** A film of which only the wet thickness, what evaporates and what was applied matter. */
export const composition = (more: Partial<Composition> = {}): Composition => ({
  pigments: [],
  binders: [],
  volatiles: [],
  pvc: exactly(0.4),
  cpvc: exactly(0.5),
  lambda: exactly(0.8),
  fatness: exactly(0.2),
  volumeSolids: exactly(1),
  wetFilm: exactly(100),
  dryFilm: exactly(100),
  mediumShare: exactly(0),
  mediumSolids: 1,
  wetDensity: exactly(1.5),
  applied: [],
  ...more,
});

export const layerStudy = (of: Layer, more: Partial<LayerStudy> = {}): LayerStudy => ({
  layer: of,
  areas: of.areas,
  coats: 1,
  composition: composition(),
  dryFilm: exactly(100),
  assumptions: [],
  below: new Map(),
  colours: () => [],
  ...more,
});

export const study = (of: Plan, layers: readonly LayerStudy[] = [], more: Partial<Study> = {}): Study => ({
  plan: of,
  layers,
  areas: of.areas.map((a) => ({
    name: a.name,
    share: a.share?.value.likely ?? 0,
    buildUp: () => [],
    target: () => undefined,
  })),
  assumptions: [],
  calendar: { dated: false, entries: [] },
  quantities: undefined,
  air: undefined,
  permanence: [],
  cautions: [],
  sources: [],
  beneath: () => undefined,
  calibration: () => {
    throw new Error('not asked for here');
  },
  dataVersion: 'test',
  ...more,
});

export const sample = (
  name: string,
  layers: readonly (readonly [Layer, (number | Interval)?])[],
): Sample => ({
  ...declared(name),
  layers: layers.map(([of, film]) => ({
    layer: { name: of.name, place, is: of },
    film: film === undefined ? undefined : measure(film, 'µm'),
    place,
  })),
});
