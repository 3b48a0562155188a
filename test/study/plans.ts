/** Plans built without the parser, so that the study is tested on its own. Only what the study reads is filled in. */
import { binder, ground, lookupPigment, solvent, support } from '../../language/src/materials/catalogue.ts';
import type { Interval } from '../../language/src/materials/interval.ts';
import type {
  AmountKind,
  AreaUse,
  Day,
  Formula,
  Ingredient,
  Layer,
  LayerKind,
  Measure,
  Medium,
  Mix,
  Paint,
  Part,
  Plan,
  Studio,
} from '../../language/src/plan/plan.ts';
import { unsaid } from '../../language/src/plan/unsaid.ts';

export const place = { uri: 'file:///test.paintplan', start: 0, end: 0 };
const named = (name: string) => ({ name, place, namePlace: place });

/** A figure, or a range; the unit is the study's own. */
export function measure(
  low: number,
  high = low,
  given: Measure['given'] = low === high ? 'exact' : 'range',
): Measure {
  const value: Interval = { low, likely: (low + high) / 2, high };
  return { value, given, unit: '', words: low === high ? `${low}` : `${low}..${high}`, place };
}

export const day = (iso: string): Day => ({ iso, number: Date.parse(iso) / 86_400_000, place });
export const area = (name: string): AreaUse => ({ name, place, areas: [name], known: true });

export const unknown: Ingredient = { name: 'nothing', place, is: { kind: 'unknown-name', near: [] } };

export function code(text: string): Ingredient {
  const [name = '', variety] = text.split(' ');
  const found = lookupPigment(name, variety);
  if (found.kind !== 'found') throw new Error(`no pigment ${text}`);
  return { name, place, is: { kind: 'pigment', pigment: found.pigment } };
}

export function liquid(name: string): Ingredient {
  const oil = binder(name);
  if (oil) return { name, place, is: { kind: 'binder', binder: oil } };
  const thin = solvent(name);
  if (!thin) throw new Error(`no liquid ${name}`);
  return { name, place, is: { kind: 'solvent', solvent: thin } };
}

export const usePaint = (paint: Paint): Ingredient => ({
  name: paint.name,
  place,
  is: { kind: 'paint', paint },
});
export const useMix = (mix: Mix): Ingredient => ({ name: mix.name, place, is: { kind: 'mix', mix } });
export const useMedium = (medium: Medium): Ingredient => ({
  name: medium.name,
  place,
  is: { kind: 'medium', medium },
});

export function formula(
  parts: readonly (readonly [number, Ingredient])[],
  amounts: AmountKind | 'none' = 'parts',
): Formula {
  const made = parts.map(
    ([value, ingredient]): Part =>
      amounts === 'none'
        ? { ingredient, place }
        : { amount: { value, kind: amounts, place }, ingredient, place },
  );
  return { parts: made, amounts, place };
}

export const paint = (name: string, pigment: string, oil = 'linseed', share?: Measure): Paint => ({
  ...named(name),
  formula: formula([[1, code(pigment)]]),
  binder: { name: oil, place, is: binder(oil) },
  oil: share,
});
export const mix = (name: string, of: Formula): Mix => ({ ...named(name), formula: of });
export const medium = (name: string, ...parts: readonly (readonly [number, string])[]): Medium => ({
  ...named(name),
  formula: formula(
    parts.map(([n, word]) => [n, liquid(word)]),
    '%',
  ),
});

export const layer = (kind: LayerKind, name: string, more: Partial<Layer> = {}): Layer => ({
  ...named(name),
  kind,
  index: 0,
  kindPlace: place,
  everywhere: true,
  ...unsaid(),
  ...more,
});

export const colour = (...parts: (readonly [number, Ingredient])[]): Pick<Layer, 'colour'> => ({
  colour: { kind: 'formula', formula: formula(parts) },
});
export const stated = (css: string): Pick<Layer, 'colour'> => ({
  colour: { kind: 'value', value: { css, place, valid: true } },
});
export const withMedium = (share: number, of: Medium): Pick<Layer, 'medium'> => ({
  medium: { share: measure(share), of: { name: of.name, place, is: { kind: 'medium', medium: of } }, place },
});
export const material = (name: string): Pick<Layer, 'material'> => ({
  material: { name, place, is: ground(name) },
});

/** Layers without areas of their own lie on all of them. */
export function plan(
  layers: readonly Layer[],
  more: Partial<Omit<Plan, 'studio'>> & {
    readonly on?: readonly string[];
    readonly studio?: Partial<Studio>;
  } = {},
): Plan {
  const { on = ['all'], studio, ...rest } = more;
  const share = 1 / on.length;
  return {
    uri: place.uri,
    kind: 'plan',
    support: {
      material: { name: 'linen', place, is: support('linen') },
      height: measure(40),
      width: measure(50),
      place,
    },
    areas: on.map((name) => ({ ...named(name), share: measure(share) })),
    implicitArea: false,
    groups: [],
    pigments: [],
    paints: [],
    mediums: [],
    mixes: [],
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
    ...rest,
    studio: { fields: [], ...studio },
    layers: layers.map((l, index) => ({
      ...l,
      index,
      ...(l.areas.length > 0 ? { everywhere: false } : { areas: on }),
    })),
  };
}
