import type { Pigment } from '../../materials/types.ts';
import type { Rule } from '../rule.ts';
import { pigmentName, pigmentPlace, whereUsed } from '../shared/pigments.ts';
import { label, memory, published } from '../shared/words.ts';

interface Restriction {
  readonly of: (pigment: Pigment) => boolean;
  readonly words: string;
}

const has =
  (hazard: Pigment['hazards'][number]) =>
  (p: Pigment): boolean =>
    p.hazards.includes(hazard);

/** The first that fits is told. Law changes and differs: this names what to ask about, never what is allowed. */
const RESTRICTIONS: readonly Restriction[] = [
  {
    of: (p) => p.code === 'PW1',
    words:
      'the EU bars paints with lead carbonate from sale save for restoring works of art; other countries limit lead in paint and except artists’ paints in part',
  },
  { of: has('arsenic'), words: 'arsenic colours are barred from general sale in many countries' },
  { of: has('mercury'), words: 'mercury compounds are restricted in many countries' },
  {
    of: (p) => p.hazards.includes('lead') && p.hazards.includes('chromium-vi'),
    words: 'lead chromates need an authorisation in the EU',
  },
  {
    of: has('lead'),
    words: 'lead in paint is limited in most countries; some except artists’ paints or restoration',
  },
  { of: has('chromium-vi'), words: 'chromates are restricted in many countries' },
];

const restrictionOf = (pigment: Pigment): Restriction | undefined => RESTRICTIONS.find((r) => r.of(pigment));

/** Pigments whose sale or use the law limits in places; told once for each, where it is first used. */
export const restrictedMaterial: Rule = {
  id: 'restricted-material',
  title: 'Pigment the law limits in places',
  theme: 'health',
  severity: 'info',
  why: 'Lead whites, chromates, arsenic and mercury colours may not be bought, sold or used everywhere, or only for restoration. What holds where you work cannot be known here.',
  whatToDo:
    'Ask what the law of your place says before you order it; where another pigment does the work, take that.',
  sources: [
    published('CLP Annex VI 082-001-00-6 for lead compounds, as listed in an open transcription'),
    memory(
      'REACH Annex XVII entry 16 for lead carbonate, entries 18 and 19 for mercury and arsenic, Annex XIV for lead chromates; 16 CFR 1303 for lead in paint; none looked up',
    ),
  ],
  restsOn: [],
  appliesTo: ['plan'],
  *check(_, study) {
    for (const [pigment, layers] of whereUsed(study, (p) => restrictionOf(p) !== undefined)) {
      const first = layers[0]?.layer;
      if (!first) continue;
      yield {
        message: `${pigmentName(pigment)} in ${label(first)} may not be sold or used everywhere: ${restrictionOf(pigment)?.words} (from memory; law differs by place and changes). Ask before you order it.`,
        place: pigmentPlace(first, (p) => p === pigment),
        layer: first.index,
        objection: {
          pigment,
          everywhere: true,
          otherwise: (p) => restrictionOf(p) === undefined,
        },
      };
    }
  },
};
