/** Fills the counted parts of language/docs/data.md from the shipped tables: `node language/build/data-page.ts`. */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { allPigments, dataRecord } from '../src/materials/catalogue.ts';
import { usualPaste } from '../src/materials/pastes.ts';
import type { Mark, PasteRule } from '../src/materials/types.ts';
import { code, fill, refill, table } from './page.ts';
import { decisions } from './pigment/decided.ts';
import { USUAL } from './pigment/usual.ts';
import { WORKS } from './works.ts';

export const DATA_PAGE = new URL('../docs/data.md', import.meta.url);

const json = (path: string) => JSON.parse(readFileSync(new URL(`../src/${path}`, import.meta.url), 'utf8'));

/** text and mark by id */
export const sources: Readonly<Record<string, readonly [text: string, mark: Mark]>> = json(
  'materials/tables/sources.json',
);

const MARKS: readonly Mark[] = [
  'published',
  'second-hand',
  'derived',
  'common practice',
  'assumption',
  'memory',
];

/** Every source id inside a part of a table, as often as it stands there. */
function idsIn(value: unknown): string[] {
  if (typeof value === 'string') return Object.hasOwn(sources, value) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap(idsIn);
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(idsIn) : [];
}

const count = (ids: readonly string[], mark: Mark): number =>
  ids.filter((id) => sources[id]?.[1] === mark).length;
const perMark = (ids: readonly string[]): (string | number)[] => MARKS.map((m) => count(ids, m) || '–');

const HOLDS: readonly (readonly [table: string, holds: string])[] = [
  ['pigments', 'pigments: identity, density, oil, optics in words, drying, light, hazards, dates'],
  ['pastes', 'oil of an unstated paste, by family of pigment'],
  ['binders', 'oils, resins, alkyd, egg, glue, gum, dispersion'],
  ['solvents', 'solvents: vapour, flash point, limits'],
  ['supports', 'supports: kind, need of a size, usual colour'],
  ['grounds', 'grounds, sizes, leaf, drawing materials, deposits'],
  ['agents', 'what a surface may be prepared with'],
  ['blue-wool', 'light dose to a just noticeable fade, by blue wool'],
];

const read = (name: string) => json(`materials/tables/${name}.json`);
const rowsOf = (name: string): readonly Record<string, unknown>[] =>
  Array.isArray(read(name)) ? read(name) : read(name).rows;

const tables = () =>
  table(
    ['table', 'what it holds', 'rows', 'sourced figures and statements', ...MARKS],
    HOLDS.map(([name, holds]) => {
      const ids = idsIn(read(name));
      return [code(`${name}.json`), holds, rowsOf(name).length, ids.length, ...perMark(ids)];
    }),
  );

const FIELDS: readonly (readonly [field: string, words: string])[] = [
  ['composition', 'composition, registry number'],
  ['density', 'density'],
  ['oilAbsorption', 'oil absorption, rub-out'],
  ['paintOil', 'oil of a workable paint'],
  ['paintOilAlso', 'the same in a second handbook'],
  ['refractiveIndex', 'refractive index'],
  ['transparency', 'transparency'],
  ['lightfastness', 'lightfastness class in oil'],
  ['lightfastnessNote', 'what is said where there is no class'],
  ['light', 'what was read of light beside the class'],
  ['drying', 'class of drying'],
  ['film', 'character of the film'],
  ['hazards', 'hazards'],
  ['classification', 'EU classification'],
  ['used', 'years of use'],
  ['dates', 'known, sold, common, rare'],
  ['incompatibilities', 'what it does not bear'],
];

const SEEN: readonly Mark[] = ['published', 'second-hand'];
/** Figures and statements whose source was seen, and all there are. */
export function seenOf(ids: readonly string[]): { readonly seen: number; readonly all: number } {
  return { seen: SEEN.reduce((sum, mark) => sum + count(ids, mark), 0), all: ids.length };
}
const share = ({ seen, all }: ReturnType<typeof seenOf>): string =>
  `${Math.round((100 * seen) / all)} % (${seen} of ${all})`;

/** Ids of the sources of every figure in every table. */
export const allIds = (): readonly string[] => HOLDS.flatMap(([name]) => idsIn(read(name)));
/** The same of the eighty pigments painters use most. */
export const usualIds = (): readonly string[] =>
  rowsOf('pigments')
    .filter((row) => USUAL.includes(String(row.id)))
    .flatMap(idsIn);

const shares = () =>
  `A source was seen for ${share(seenOf(allIds()))} of all figures and statements, and for ${share(seenOf(usualIds()))} of those about the eighty pigments painters use most.`;

/** What a field of a pigment holds now, as short as it can be said. */
function now(id: string, field: string): string {
  const pigment = allPigments().find((p) => p.id === id);
  const value: unknown = pigment?.[field as keyof typeof pigment];
  if (typeof value !== 'object' || value === null) return String(value ?? '–');
  if ('low' in value && 'high' in value)
    return value.low === value.high ? String(value.low) : `${value.low}–${value.high}`;
  if ('value' in value) return String(value.value);
  if ('words' in value) return String(value.words);
  return field === 'hazards' ? (value as readonly string[]).join(', ') || 'none named' : '–';
}

/** Where sources contradicted the tables, and what was taken. */
const decided = () =>
  table(
    ['pigment', 'what', 'the table said', 'found', 'stands now', 'why'],
    decisions.map((d) => [
      d.of.join(', '),
      FIELDS.find(([field]) => field === d.field)?.[1] ?? d.field,
      d.was,
      d.found,
      d.kept ? 'as it was' : now(d.of[0]!, d.field),
      d.why,
    ]),
  );

/** How many pigments anything was looked up for, and how much of it. */
function lookedUp(): string {
  const seen = (ids: readonly string[]) => count(ids, 'published') + count(ids, 'second-hand');
  const rows = rowsOf('pigments').map(idsIn);
  const known = rows.filter((ids) => seen(ids) > 0);
  const all = known.flat();
  return `For ${known.length} pigments something was looked up: ${Math.round((100 * seen(all)) / all.length)} % of what is told of them. The other ${rows.length - known.length} are from memory throughout, common practice and assumptions aside. Column by column:`;
}

const pigmentFields = () =>
  table(
    ['of the pigments', 'given for', ...MARKS],
    FIELDS.map(([field, words]) => {
      const ids = rowsOf('pigments').flatMap((row) => idsIn(row[field]));
      return [words, ids.length, ...perMark(ids)];
    }),
  );

/** Oil of a paste by family, in multiples of the oil absorption. */
function pastes(): string {
  const rules: readonly (readonly [string, PasteRule])[] = [
    ['every other pigment', usualPaste],
    ...new Map(
      allPigments().flatMap((p) =>
        p.paste && p.paste !== usualPaste ? [[p.paste.family, p.paste] as const] : [],
      ),
    ),
  ];
  return table(
    ['family', 'low', 'likely', 'high', 'mark', 'source'],
    rules.map(([family, { low, likely, high, source }]) => [
      family,
      low,
      likely,
      high,
      source.mark,
      source.text,
    ]),
  );
}

const CLASSES: Readonly<Record<string, string>> = {
  A: 'measured in oil',
  B: 'measured in another binder, rescaled',
  C: 'derived from one film over four grounds',
  D: 'estimated by kinship: an assumption',
};

const optics = () => {
  const pigments: readonly { readonly class: string }[] = json('optics/tables/pigments.json').pigments;
  return table(
    ['class', 'absorption and scattering rest on', 'pigments'],
    Object.entries(CLASSES).map(([name, words]) => [
      name,
      words,
      pigments.filter((p) => p.class === name).length,
    ]),
  );
};

/** How often the tables' figures and statements name each work. */
const works = () => {
  const used = HOLDS.flatMap(([name]) => idsIn(read(name)));
  return WORKS.map(
    ({ named, reference }) =>
      [reference, used.filter((id) => named.test(sources[id]?.[0] ?? '')).length] as const,
  )
    .sort((a, b) => b[1] - a[1])
    .map(([reference, times]) => `- ${reference}: ${times}`)
    .join('\n');
};

const version = () =>
  [
    `Data **${dataRecord.version}** of ${dataRecord.date}. ${dataRecord.licence}.`,
    '',
    ...dataRecord.changes.map((c) => `- ${c.version}, ${c.date}: ${c.what}`),
  ].join('\n');

export const filled = (page: string): string =>
  fill(page, {
    version,
    tables,
    shares,
    decided,
    pigments: () => `${lookedUp()}\n\n${pigmentFields()}`,
    optics,
    works,
    pastes,
  });

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) refill(DATA_PAGE, filled);
