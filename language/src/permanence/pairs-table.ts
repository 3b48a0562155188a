/**
 * Pigments that harm each other. Only pairs a source was seen for, or that are told to be disputed; what the shipped
 * table marks as from memory alone is left out. Codes are Colour Index generic names.
 */
import type { Pigment, Source } from '../materials/types.ts';

export interface HarmingPair {
  readonly one: (pigment: Pigment) => boolean;
  readonly other: (pigment: Pigment) => boolean;
  readonly harm: string;
  /** `mixed`: only within one film; `touching`: also where films lie on one another */
  readonly reach: 'mixed' | 'touching';
  /** old books warn and later practice disagrees */
  readonly disputed?: true;
  readonly source: Source;
}

const code =
  (...codes: readonly string[]) =>
  (p: Pigment): boolean =>
    p.code !== undefined && codes.includes(p.code);
const lead = (p: Pigment): boolean => p.hazards.includes('lead');

const LITHOPONE = code('PW5');
/** The two arsenic sulphides. */
const ORPIMENT = code('PY39', 'PR39');
const CADMIUMS = code('PY35', 'PY37', 'PO20', 'PR108', 'PR113');
/** Copper that acids and sulphides can reach; the copper of the phthalocyanines is bound. */
const COPPER_CODES = code('PG20', 'PG21', 'PG22', 'PG39', 'PB30');
const COPPER_SALTS = (p: Pigment): boolean => COPPER_CODES(p) || p.id === 'copper-resinate';
const EARTHS = code('PY43', 'PR102', 'PBr7', 'PBr6');
const ANATASE = (p: Pigment): boolean => p.code === 'PW6' && /anatase/i.test(`${p.variety ?? ''} ${p.id}`);

/** Organic colours that light takes: natural lakes and dyes, and the synthetic ones below the first class. */
const FADING_CODES = code(
  'PB66',
  'PG8',
  'PR9',
  'PR83',
  'PR83:1',
  'PR112',
  'PR170',
  'PR209',
  'PV23',
  'PV37',
  'PY1',
  'PY3',
  'PY74',
  'PY97',
  'PY155',
);
const FADING = (p: Pigment): boolean =>
  p.lightfastness?.value !== 'I' && (FADING_CODES(p) || /^N[RYB]\d/.test(p.code ?? ''));

const seen = (text: string): Source => ({ text, mark: 'published' });

export const HARMING_PAIRS: readonly HarmingPair[] = [
  {
    one: LITHOPONE,
    other: lead,
    harm: 'zinc sulphide and lead form lead sulphide, which is dark',
    reach: 'touching',
    source: seen('Gardner, Paint Technology and Tests (1911), ch. III'),
  },
  {
    one: CADMIUMS,
    other: COPPER_SALTS,
    harm: 'the sulphide of the cadmium blackens the copper colour',
    reach: 'mixed',
    source: seen("Pigments through the Ages (IDEA, from Artists' Pigments), emerald green"),
  },
  {
    one: ORPIMENT,
    other: COPPER_SALTS,
    harm: 'the sulphide of orpiment or realgar darkens copper colours',
    reach: 'mixed',
    source: seen('Gettens & Stout, Painting Materials (1942) p.135'),
  },
  {
    one: ORPIMENT,
    other: lead,
    harm: 'the sulphide of orpiment or realgar darkens some lead colours',
    reach: 'mixed',
    source: seen('Gettens & Stout, Painting Materials (1942) p.135'),
  },
  {
    one: code('PY40'),
    other: FADING,
    harm: 'aureolin hastens the fading of organic colours and may turn brown with them',
    reach: 'mixed',
    source: seen('Gettens & Stout, Painting Materials (1942) p.110'),
  },
  {
    one: code('PW4'),
    other: FADING,
    harm: 'zinc white hastens the fading of organic colours in tints',
    reach: 'mixed',
    source: seen('Gettens & Stout, Painting Materials (1942) p.183; KIK-IRPA glossary, zinc white'),
  },
  {
    one: ANATASE,
    other: FADING,
    harm: 'the anatase form of titanium white hastens the fading of organic colours in tints',
    reach: 'mixed',
    source: seen('KIK-IRPA glossary, titanium white, after Eastaugh 2004 and Perego 2005'),
  },
  {
    one: code('PB29'),
    other: lead,
    harm: 'said to darken together; later practice finds that oil protects them',
    reach: 'mixed',
    disputed: true,
    source: seen('Toch, Materials for Permanent Painting (1911); Gardner 1911, ch. III'),
  },
  {
    one: code('PR83', 'PR83:1'),
    other: EARTHS,
    harm: 'alizarin is said to lose its permanence with earths',
    reach: 'mixed',
    disputed: true,
    source: {
      text: 'Gettens & Stout, Painting Materials (1942), entry Alizarin, reporting Toch',
      mark: 'second-hand',
    },
  },
];
