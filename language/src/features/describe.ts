/** What is known of a pigment or a material, as rows with their sources: hovers, completion and `explain` print these. */
import { agent, binder, ground, solvent, support } from '../materials/catalogue.ts';
import { cautionIn, classificationWords, isDust } from '../materials/cautions.ts';
import type {
  Binder,
  Figure,
  GroundMaterial,
  Pigment,
  PreparationAgent,
  Solvent,
  SolventLimit,
  Source,
  Support,
} from '../materials/types.ts';
import { dayLimits, limitName, quarterLimits } from '../studio/air-limits.ts';

/** One fact, in words with its unit, and where it comes from. */
export interface Row {
  readonly label: string;
  readonly words: string;
  readonly source?: Source;
}

/** What is known of one pigment or material, row by row. */
export interface Description {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** A source as it is printed: its mark first, unless it was seen published or says so itself. */
export const sourceWords = (s: Source): string =>
  s.mark === 'published' || s.text.startsWith(s.mark) ? s.text : `${s.mark}: ${s.text}`;

const figureWords = (f: Figure, unit: string) =>
  `${f.low === f.high ? f.low : `${f.low}–${f.high}`}${unit ? ` ${unit}` : ''}`;
const figure = (label: string, f: Figure | undefined, unit = ''): Row[] =>
  f ? [{ label, words: figureWords(f, unit), source: f.source }] : [];
const said = (label: string, s: { readonly value: string; readonly source: Source } | undefined): Row[] =>
  s ? [{ label, words: s.value, source: s.source }] : [];
const limit = (l: SolventLimit): Row => ({
  label: limitName(l),
  words: [l.ppm !== undefined && `${l.ppm} ppm`, l.mgPerM3 !== undefined && `${l.mgPerM3} mg/m³`]
    .filter(Boolean)
    .join(', '),
  source: l.source,
});

/** Everything the catalogue holds of a pigment, as rows with their sources. */
export function describePigment(p: Pigment): Description {
  return {
    title: `${p.id}: ${p.names.join(', ')}`,
    rows: [
      ...said('composition', p.composition),
      ...(p.cas ? [{ label: 'CAS', words: p.cas }] : []),
      ...said('transparency', p.transparency),
      ...figure('density', p.density, 'g/cm³'),
      ...figure('oil absorption', p.oilAbsorption, 'g per 100 g'),
      ...figure('oil in paint', p.paintOil, 'g per 100 g'),
      ...figure('oil in paint, elsewhere', p.paintOilAlso, 'g per 100 g'),
      ...(p.paste
        ? [
            {
              label: 'oil in a paste',
              words: `${p.paste.low}–${p.paste.high} times the oil absorption, likely ${p.paste.likely}`,
              source: p.paste.source,
            },
          ]
        : []),
      ...figure('refractive index', p.refractiveIndex),
      ...said('drying in oil', p.drying),
      ...said('film', p.film),
      p.lightfastness
        ? { label: 'lightfastness', words: `ASTM ${p.lightfastness.value}`, source: p.lightfastness.source }
        : {
            label: 'lightfastness',
            words: p.lightfastnessNote?.value ?? 'not listed',
            source: p.lightfastnessNote?.source,
          },
      ...(p.light ?? []).flatMap((read) => said('light, as read', read)),
      {
        label: 'hazards',
        words: p.hazards.length > 0 ? p.hazards.join(', ') : 'none named in the tables',
        source: p.hazardsSource,
      },
      ...p.hazards.flatMap((h): Row[] => {
        const caution = cautionIn(p, h, true);
        return caution
          ? [
              {
                label: `caution, ${h}${isDust(h) ? ', as powder' : ''}`,
                words: caution.text,
                source: caution.source,
              },
            ]
          : [];
      }),
      { label: 'classification', words: classificationWords(p), source: p.classification?.source },
      { label: 'in use', words: p.used.words, source: p.used.source },
      ...said('goes badly with', p.incompatibilities),
    ],
  };
}

function describeBinder(b: Binder): Description {
  return {
    title: `${b.id}: ${b.names.join(', ')} (${b.kind})`,
    rows: [
      ...figure('density', b.density, 'g/cm³'),
      ...figure('stays in the film', b.solids, '× its mass'),
      ...figure('refractive index', b.refractiveIndex),
      ...figure('iodine value', b.iodineValue),
      ...figure('touch-dry', b.touchDry, 'days, thin film at 20 °C'),
      ...said('yellowing', b.yellowing),
      ...said('film', b.flexibility),
      ...said('note', b.notes),
    ],
  };
}

function describeSolvent(s: Solvent): Description {
  return {
    title: `${s.id}: ${s.names.join(', ')}`,
    rows: [
      ...figure('density', s.density, 'g/ml'),
      ...figure('boils', s.boiling, '°C'),
      ...figure('flash point', s.flashPoint, '°C'),
      ...figure('vapour pressure', s.vapourPressure, 'kPa at 20 °C'),
      ...[...dayLimits(s), ...quarterLimits(s)].map(limit),
      ...said('classification', s.classification),
      ...said('note', s.notes),
    ],
  };
}

function describeGround(g: GroundMaterial): Description {
  return {
    title: `${g.id}: ${g.names.join(', ')} (${g.kind})`,
    rows: [
      {
        label: 'may be painted on',
        words: `after ${g.ready.least} days at least, ${g.ready.usual} usually, ${g.ready.best} better`,
        source: g.ready.source,
      },
      { label: 'absorbent', words: g.absorbent ? 'yes' : 'no', source: g.source },
      {
        label: 'on canvas',
        words: g.flexible ? 'flexible enough' : 'too stiff for a flexible support',
        source: g.source,
      },
      ...figure('film', g.film, 'µm'),
    ],
  };
}

const describeSupport = (s: Support): Description => ({
  title: `${s.id}: ${s.names.join(', ')} (${s.kind})`,
  rows: [
    { label: 'wants a size', words: s.wantsSize ? 'yes, before oil touches it' : 'no', source: s.source },
  ],
});

const describeAgent = (a: PreparationAgent): Description => ({
  title: `${a.id}: ${a.names.join(', ')}`,
  rows: [
    { label: 'verdict', words: a.verdict.replaceAll('-', ' ') },
    { label: 'why', words: a.why.value, source: a.why.source },
  ],
});

/** Everything the catalogue has under a material's name; a name may be an oil for one role and a ground for another. */
export function describeMaterial(name: string): readonly Description[] {
  const [b, s, g, u, a] = [binder(name), solvent(name), ground(name), support(name), agent(name)];
  return [
    b && describeBinder(b),
    s && describeSolvent(s),
    g && describeGround(g),
    u && describeSupport(u),
    a && describeAgent(a),
  ].filter((d) => d !== undefined);
}
