/** Fills language/docs/cautions.md with the cautions the tool prints: `node language/build/cautions-page.ts`. */
import { pathToFileURL } from 'node:url';
import { allPigments } from '../src/materials/catalogue.ts';
import {
  type Caution,
  cautionFor,
  deferringLine,
  paintCaution,
  type Step,
  solventCaution,
  stepCaution,
} from '../src/materials/cautions.ts';
import { solvents } from '../src/materials/solvents.ts';
import type { Figure, Hazard, Mark, SolventLimit, Source } from '../src/materials/types.ts';
import { dayLimits, limitName, quarterLimits } from '../src/studio/air-limits.ts';
import { code, fill, refill, table } from './page.ts';

export const CAUTIONS_PAGE = new URL('../docs/cautions.md', import.meta.url);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const BEFORE: Partial<Record<Mark, string>> = {
  'common practice': 'common practice: ',
  assumption: 'assumption: ',
};
const AFTER: Partial<Record<Mark, string>> = { 'second-hand': ' (second-hand)', derived: ' (derived)' };

function sourced({ text, mark }: Source): string {
  const words = text.replace(/^memory \(not looked up\)$/, 'from memory, not looked up');
  return capital(`${BEFORE[mark] ?? ''}${words}${AFTER[mark] ?? ''}`);
}

const said = ({ title, text, source }: Caution, more = ''): string =>
  `**${title}.** ${text}${more} *${sourced(source)}.*`;

const steps = (...names: readonly Step[]) => names.map((n) => said(stepCaution(n))).join('\n\n');

/** Pigments of the catalogue that bring a hazard, by code where they have one. */
const holding = (hazard: Hazard): string => {
  const ids = allPigments().flatMap((p) => (p.hazards.includes(hazard) ? [p.id] : []));
  return ids.length > 0 ? ` Found in ${ids.map(code).join(', ')}.` : '';
};
const hazards = (...names: readonly Hazard[]) =>
  names
    .flatMap((n) => {
      const paint = paintCaution(n);
      return [said(cautionFor(n), holding(n)), ...(paint ? [said(paint)] : [])];
    })
    .join('\n\n');

const POISONS: readonly Hazard[] = [
  'lead',
  'cadmium',
  'chromium-vi',
  'arsenic',
  'mercury',
  'antimony',
  'barium',
  'selenium',
  'copper',
  'cobalt',
  'nickel',
  'manganese',
  'pah',
  'cyanide-if-heated',
  'toxic-if-swallowed',
  'sensitiser',
];
const DUSTS: readonly Hazard[] = ['fine-dust', 'silica-dust'];

const limit = (l: SolventLimit | undefined): string =>
  l === undefined
    ? '–'
    : [l.ppm !== undefined && `${l.ppm} ppm`, l.mgPerM3 !== undefined && `${l.mgPerM3} mg/m³`]
        .filter(Boolean)
        .join(' = ');

const minus = (degrees: number): string => String(degrees).replace('-', '−');
const flash = (f: Figure | undefined): string =>
  f
    ? `${f.low === f.high ? minus(f.low) : `${minus(f.low)} to ${minus(f.high)}`} °C${f.source.mark === 'memory' ? ' (memory)' : ''}`
    : '–';

const harmful = solvents.filter((s) => !s.harmless);

const air = () =>
  table(
    [
      'solvent',
      'keep the air below, over a day',
      'over a quarter of an hour',
      'flashes at',
      'rests on',
      'others allow, over a day',
    ],
    harmful.map((s) => {
      const [day] = dayLimits(s);
      const [quarter] = quarterLimits(s);
      return [
        s.id,
        limit(day),
        limit(quarter),
        flash(s.flashPoint),
        day
          ? [
              ...new Set(
                [day, ...(quarter ? [quarter] : [])].map((l) => `${limitName(l)}: ${sourced(l.source)}`),
              ),
            ].join('; ')
          : 'no limit was found: counted as turpentine',
        dayLimits(s)
          .slice(1)
          .map((l) => `${l.whose} ${limit(l)}`)
          .join('; ') || '–',
      ];
    }),
  );

const solventWords = () =>
  harmful
    .flatMap((s) => solventCaution(s.id) ?? [])
    .map((c) => said(c))
    .join('\n\n');

const parts: Readonly<Record<string, () => string>> = {
  defer: () => `> ${deferringLine.text}`,
  rags: () => steps('rags', 'alkyd-medium'),
  'any-solvent': () => steps('any-solvent'),
  air,
  solvents: solventWords,
  poisons: () => hazards(...POISONS),
  dusts: () => `${steps('dry-pigment')}\n\n${hazards(...DUSTS)}`,
  abrading: () => steps('sanding-toxic'),
  people: () => steps('vulnerable-people'),
  waste: () => steps('waste'),
  old: () => steps('old-paint', 'restoration'),
};

export const filled = (page: string): string => fill(page, parts);

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) refill(CAUTIONS_PAGE, filled);
