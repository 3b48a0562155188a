/** Cautions in our own words, each with where it comes from. They defer, always, to those who can see the studio. */
import { commonPractice } from './sources.ts';
import type { Hazard, Pigment, Source } from './types.ts';

export interface Caution {
  readonly title: string;
  readonly text: string;
  readonly source: Source;
}

/** Printed wherever a caution or an estimate of exposure is. */
export const deferringLine = {
  text: 'This is an estimate, not a measurement. The safety data sheet of the jar in your hand, the codes of the place you work in, and the advice of licensed or qualified people come first.',
} as const;

const memory = (text: string): Source => ({ text: `memory (${text})`, mark: 'memory' });
const seen = (text: string): Source => ({ text, mark: 'published' });

const hazards: Readonly<Record<Hazard, Caution>> = {
  lead: {
    title: 'Lead',
    text: 'Poison by dust and by mouth. Never sand, spray or grind it dry; gloves, no food or drink near it, wash before eating; not for children or anyone pregnant. Workplaces keep the air below 50 µg/m³ over 8 hours and act from 30; a longer day divides 400 by its hours.',
    source: seen('OSHA 29 CFR 1910.1025 (c), (b) and appendix B'),
  },
  cadmium: {
    title: 'Cadmium',
    text: 'Its dust brings lung cancer and harms the kidneys. Never sand, spray or grind it dry; no food or drink near it, wash before eating. Workplaces keep the air below 5 µg/m³ over 8 hours.',
    source: seen('OSHA 29 CFR 1910.1027 (c) and its preamble'),
  },
  'chromium-vi': {
    title: 'Chromate',
    text: 'A carcinogen. Use it wet only, make no dust, keep it off the skin; workplaces keep the air below 5 µg/m³ over 8 hours and act from 2.5.',
    source: seen('OSHA 29 CFR 1910.1026 (b), (c); CLP Annex VI, entries of the chromates'),
  },
  arsenic: {
    title: 'Arsenic',
    text: 'Poison by dust and by mouth. No dust, no acid near it, gloves; leftovers go to a hazardous waste collection, never into a bin or a sink.',
    source: memory('not looked up'),
  },
  mercury: {
    title: 'Mercury sulphide',
    text: 'Poison as dust, and gives off mercury when heated. No dust, no heat; leftovers go to a hazardous waste collection.',
    source: memory('not looked up'),
  },
  cobalt: {
    title: 'Cobalt',
    text: 'Its dust can make skin and lungs sensitive; breathing it for long may bring asthma and scarred lungs. Keep it wet.',
    source: seen('CAMEO (MFA Boston), Characteristics of Common Blue Pigments (cerulean dust); rest memory'),
  },
  nickel: {
    title: 'Nickel',
    text: 'Its dust can make skin and lungs sensitive. Keep it wet, keep it off the skin.',
    source: memory('not looked up'),
  },
  manganese: {
    title: 'Manganese',
    text: 'Its dust, breathed for long, harms the nerves. Keep it wet.',
    source: memory('not looked up'),
  },
  antimony: {
    title: 'Antimony',
    text: 'Harmful as dust where it is not firmly bound. Keep it wet.',
    source: memory('not looked up'),
  },
  copper: {
    title: 'Copper',
    text: 'Harmful when swallowed, and to water life. No dust, nothing into the sink.',
    source: memory('not looked up'),
  },
  barium: {
    title: 'Barium',
    text: 'Soluble barium is poison; make no dust and keep acid away.',
    source: memory('not looked up'),
  },
  selenium: {
    title: 'Selenium',
    text: 'Harmful as dust; never heat it. Keep it wet.',
    source: memory('not looked up'),
  },
  'fine-dust': {
    title: 'Fine dust',
    text: 'So fine that it hangs in the air: wet the powder before it is moved, wipe up wet, wear a fitted respirator, run no fan over a heap.',
    source: commonPractice(
      'handling of fine powders; titanium dioxide’s EU classification as a suspected carcinogen was annulled on 1 August 2025 (CJEU C-71/23 P, C-82/23 P), its dust is still to be avoided',
    ),
  },
  'silica-dust': {
    title: 'Quartz dust',
    text: 'Earths may hold fine quartz, which scars lungs. Wet the powder before it is moved; a fitted respirator for dry work.',
    source: commonPractice('handling of earth pigments'),
  },
  pah: {
    title: 'Tar and soot',
    text: 'Some grades hold polycyclic hydrocarbons, which cause cancer. Keep it off the skin, breathe no dust and no fume.',
    source: memory('not looked up'),
  },
  sensitiser: {
    title: 'Sensitiser',
    text: 'May set off an allergy. Gloves, and stop at the first itch or wheeze.',
    source: memory('not looked up'),
  },
  'toxic-if-swallowed': {
    title: 'Poison if swallowed',
    text: 'A strong purge in small amounts. No food near it; never point a brush with the lips.',
    source: memory('not looked up'),
  },
  'cyanide-if-heated': {
    title: 'Iron cyanide blue',
    text: 'Sound as it is, but keep it from strong acid and from heat, which set hydrogen cyanide free.',
    source: memory('not looked up'),
  },
};

/** The caution of those who handle dry pigment, or rub paint down to dust. */
export const cautionFor = (hazard: Hazard): Caution => hazards[hazard];

/** Hazards that harm as dust alone: paint from the tube gives none off. */
const AS_DUST: readonly Hazard[] = ['fine-dust', 'silica-dust', 'pah', 'manganese', 'antimony', 'selenium'];

export const isDust = (hazard: Hazard): boolean => AS_DUST.includes(hazard);

/** What a hazard that harms as dust above all does in paint from the tube. */
const inPaint: Partial<Readonly<Record<Hazard, Caution>>> = {
  cobalt: {
    title: 'Cobalt in paint',
    text: 'May make skin sensitive. Keep it off the skin; never sand it dry.',
    source: memory('not looked up'),
  },
  nickel: {
    title: 'Nickel in paint',
    text: 'A common allergy of the skin. Keep it off the skin; never sand it dry.',
    source: memory('not looked up'),
  },
};

/** Siennas hold a few hundredths of manganese, umbers up to a fifth: the care for any dry earth covers it. */
const isTrace = ({ id }: Pigment, hazard: Hazard): boolean => hazard === 'manganese' && id.endsWith('sienna');

/** Words for paint from the tube, where they differ from those for powder. */
export const paintCaution = (hazard: Hazard): Caution | undefined => inPaint[hazard];

/** What to beware of in a pigment as it is handled; undefined where nothing is. */
export function cautionIn(pigment: Pigment, hazard: Hazard, powder: boolean): Caution | undefined {
  if (isTrace(pigment, hazard)) return undefined;
  if (powder) return hazards[hazard];
  return isDust(hazard) ? undefined : (inPaint[hazard] ?? hazards[hazard]);
}

export type Step =
  | 'sanding-toxic'
  | 'dry-pigment'
  | 'rags'
  | 'alkyd-medium'
  | 'vulnerable-people'
  | 'old-paint'
  | 'restoration'
  | 'waste'
  | 'any-solvent';

const steps: Readonly<Record<Step, Caution>> = {
  'sanding-toxic': {
    title: 'Rubbing down a poisonous layer',
    text: 'Do not. Dry abrasion of lead, cadmium, chromate, arsenic or mercury paint puts poison into the air and on every surface. Oil out thinly, or wipe the film instead.',
    source: seen(
      'OSHA 29 CFR 1910.1025 (lead), 1910.1026 (chromium VI) and 1910.1027 (cadmium) limit their dust; the same for arsenic and mercury: common practice',
    ),
  },
  'dry-pigment': {
    title: 'Grinding from dry pigment',
    text: 'Wet the powder with oil before it is moved about, wipe up wet, wear a fitted respirator, run no fan over the heap, and keep the slab for this work alone.',
    source: commonPractice('handling of dry pigment'),
  },
  rags: {
    title: 'Oily rags',
    text: 'Rags wet with a drying oil heat up by themselves within hours and catch fire. Spread each flat and single outdoors until stiff, or put them into a closed metal can filled with water and a little detergent; empty it as the fire authority says.',
    source: {
      text: 'NFPA tip sheet on oily rags as repeated by a university and insurers (not read direct)',
      mark: 'second-hand',
    },
  },
  'alkyd-medium': {
    title: 'Alkyd medium',
    text: 'Its spirit goes into the air you breathe, and its rags heat up as those of an oil do.',
    source: commonPractice('alkyd mediums'),
  },
  'vulnerable-people': {
    title: 'Children, pets, pregnancy',
    text: 'Keep them out of a room with lead, cadmium, chromate or solvent vapour.',
    source: commonPractice('studio safety'),
  },
  'old-paint': {
    title: 'Old paint',
    text: 'Treat every old white and every old paint as lead until a test says otherwise: no sanding, no heat.',
    source: commonPractice('work on old paint'),
  },
  restoration: {
    title: 'Another owner’s painting',
    text: 'Record before anything else. Try no solvent and no treatment on it: that is for a qualified conservator.',
    source: commonPractice('conservation'),
  },
  waste: {
    title: 'Waste',
    text: 'Pigment water, spirit and rags never go down the sink: they go to a hazardous waste collection.',
    source: commonPractice('studio waste'),
  },
  'any-solvent': {
    title: 'Solvent in the air',
    text: 'Work in a cross-draught or with six and more air changes an hour, keep jars closed, keep no solvent-wet rag indoors. Smell is no measure: what does not smell is in the air all the same.',
    source: commonPractice(
      'solvents; a published laboratory safety summary gives a mean odour threshold of 180 ppm for ethanol',
    ),
  },
};

export const stepCaution = (step: Step): Caution => steps[step];

const solventCautions: Readonly<Record<string, Caution>> = {
  turpentine: {
    title: 'Turpentine',
    text: 'Keep the air below 20 ppm over a day; NIOSH and OSHA still allow 100 (560 mg/m³); 800 is dangerous at once. It makes skin sensitive: at the first rash stop using it for good. It flashes at 35 °C and harms kidneys and nerves.',
    source: {
      text: 'ACGIH’s limit as Haz-Map quotes it; the rest NIOSH Pocket Guide to Chemical Hazards, turpentine',
      mark: 'second-hand',
    },
  },
  'white-spirit': {
    title: 'White spirit',
    text: 'Keep the air below 116 mg/m³ over a day and 290 over a quarter of an hour; NIOSH allows 350 and 1800, ACGIH 525 (100 ppm). It makes drowsy, dries the skin and, over years, harms the brain.',
    source: {
      text: 'SCOEL/SUM/87 as quoted by DOHSBase; OSHA chemical sampling information, Stoddard solvent',
      mark: 'second-hand',
    },
  },
  'odourless-spirit': {
    title: 'Odourless spirit',
    text: 'Its vapour is there although it hardly smells: the same draught as for white spirit, whose limits stand for it here.',
    source: seen('OSHA petroleum distillates (naphtha) sheet, nearest class'),
  },
  ethanol: {
    title: 'Ethanol',
    text: 'It flashes at 13 °C: no flame, no spark. Keep the air below 200 ppm over a day; NIOSH and OSHA allow 1000.',
    source: {
      text: 'TRGS 900 as quoted by GisChem; NIOSH Pocket Guide to Chemical Hazards, ethyl alcohol',
      mark: 'second-hand',
    },
  },
  isopropanol: {
    title: 'Isopropanol',
    text: 'It flashes at 12 °C: no flame, no spark. Keep the air below 200 ppm over a day and 400 over a quarter of an hour; NIOSH allows 400 and 500.',
    source: {
      text: 'ACGIH’s limits as a safety data sheet quotes them; NIOSH Pocket Guide to Chemical Hazards, isopropyl alcohol',
      mark: 'second-hand',
    },
  },
  methanol: {
    title: 'Methanol',
    text: 'A poison through skin, lungs and mouth that blinds. Use something else.',
    source: memory('not looked up'),
  },
  'methylated-spirit': {
    title: 'Methylated spirit',
    text: 'It holds methanol or other denaturants and flashes at 12 °C. Plain isopropanol does the same work.',
    source: memory('not looked up'),
  },
  ammonia: {
    title: 'Ammonia',
    text: 'Keep the air below 25 ppm; 300 is dangerous at once. Never with bleach. Shield the eyes.',
    source: {
      text: 'NIOSH 25 ppm as quoted in state agriculture guidance; OSHA 50 ppm',
      mark: 'second-hand',
    },
  },
  naphtha: {
    title: 'Naphtha',
    text: 'It flashes far below room temperature: no flame, no spark, and not indoors. Keep the air below 116 mg/m³ over a day and 290 over a quarter of an hour; NIOSH allows 350 and 1800.',
    source: {
      text: 'SCOEL/SUM/87 as quoted by DOHSBase; OSHA petroleum distillates (naphtha) sheet; flash point from memory',
      mark: 'second-hand',
    },
  },
  'spike-oil': {
    title: 'Oil of spike',
    text: 'No limit is published for it: treat it as turpentine. It may make skin sensitive, and it softens paint that is not firm.',
    source: memory('not looked up'),
  },
  'pine-oil': {
    title: 'Pine oil',
    text: 'No limit is published for it: treat it as turpentine. A seventh of it stays behind and holds back drying.',
    source: { text: 'Gardner 1911, ch. I, for the residue; the rest from memory', mark: 'memory' },
  },
  'citrus-solvent': {
    title: 'Citrus solvent',
    text: 'Natural is not harmless: once it has stood in air it makes skin sensitive. Keep the air below 5 ppm over a day (28 mg/m³); the WEEL is 30 ppm.',
    source: {
      text: 'TRGS 900 as quoted by a building biologist’s lexicon and a safety data sheet; WEEL as Haz-Map quotes it; the rest from memory',
      mark: 'second-hand',
    },
  },
};

export const solventCaution = (id: string): Caution | undefined =>
  Object.hasOwn(solventCautions, id) ? solventCautions[id] : undefined;

const UNLISTED = /^no harmonised entry( recalled)?/;

/** What the EU's list of classifications says of a pigment. One that no list classifies is not thereby safe. */
export function classificationWords({ classification }: Pigment): string {
  if (!classification) return 'not looked up';
  const { value, source } = classification;
  const unlisted = source.mark === 'memory' ? 'not looked up; none recalled' : 'searched and not listed';
  return value.replace(UNLISTED, unlisted);
}

/** For tests: every text there is. */
export const allCautions = (): readonly Caution[] => [
  ...Object.values(hazards),
  ...Object.values(inPaint),
  ...Object.values(steps),
  ...Object.values(solventCautions),
];
