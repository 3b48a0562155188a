/**
 * Adds a pigment from one file: its row, its sources, its optical row, the data's number, the pages. Nothing is written
 * unless all of it is right.
 *
 *     npm run add-pigment -- FILE.json
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import type { Transparency } from '../../src/materials/types.ts';
import {
  fromKin,
  fromSwatches,
  type Kin,
  type Measured,
  type OpticsRow,
  type Table,
  Unfit,
} from './optical.ts';

const at = (path: string) => new URL(`../../${path}`, import.meta.url);
const PIGMENTS = at('src/materials/tables/pigments.json');
const SOURCES = at('src/materials/tables/sources.json');
const OPTICS = at('src/optics/tables/pigments.json');
const KIN = at('build/optics/kin.json');
const MARKS = ['published', 'second-hand', 'memory', 'common practice', 'derived', 'assumption'];
const WANTED = [
  'id',
  'names',
  'composition',
  'density',
  'oilAbsorption',
  'transparency',
  'drying',
  'hazards',
  'used',
];
/** Where a field keeps the id of its source. */
const SOURCED: Readonly<Record<string, number>> = {
  composition: 1,
  elements: 3,
  density: 2,
  oilAbsorption: 2,
  paintOil: 2,
  paintOilAlso: 2,
  refractiveIndex: 2,
  transparency: 1,
  lightfastness: 1,
  lightfastnessNote: 1,
  drying: 1,
  film: 1,
  hazards: 1,
  classification: 1,
  used: 1,
  incompatibilities: 1,
};
const DATES = ['known', 'sold', 'common', 'rareAfter'];
const FIELDS = new Set([
  ...WANTED,
  ...Object.keys(SOURCED),
  ...['variety', 'constitution', 'cas', 'light', 'dates'],
]);

type Row = Readonly<Record<string, unknown>>;
const json = (url: URL) => JSON.parse(readFileSync(url, 'utf8'));
/** One row a line, so that a difference can be read. */
const lines = (rows: readonly unknown[]) => rows.map((r) => JSON.stringify(r)).join(',\n');

function checked(pigment: Row, sources: Readonly<Record<string, unknown>>, known: readonly Row[]): void {
  const missing = WANTED.filter((field) => pigment[field] === undefined);
  if (missing.length > 0) throw new Unfit(`pigment: ${missing.join(', ')} is missing.`);
  const strange = Object.keys(pigment).filter((field) => !FIELDS.has(field));
  if (strange.length > 0)
    throw new Unfit(`pigment: there is no field ${strange.join(', ')}. There are ${[...FIELDS].join(', ')}.`);
  if (known.some((p) => p.id === pigment.id))
    throw new Unfit(`pigment.id: ‘${pigment.id}’ is there already.`);
  if (pigment.lightfastness === undefined && pigment.lightfastnessNote === undefined)
    throw new Unfit('pigment.lightfastness: the class, or a lightfastnessNote that says why there is none.');
  for (const [field, place] of Object.entries(SOURCED)) {
    const value = pigment[field];
    if (value === undefined) continue;
    const id = Array.isArray(value) ? value[place] : undefined;
    if (typeof id !== 'string' || !Object.hasOwn(sources, id))
      throw new Unfit(
        `pigment.${field}: the id of its source is wanted as value ${place + 1}, found ${JSON.stringify(id)}. Take one of sources.json, or write a new one under "sources".`,
      );
  }
  const isSource = (id: unknown) => typeof id === 'string' && Object.hasOwn(sources, id);
  for (const said of (pigment.light ?? []) as readonly (readonly unknown[])[])
    if (typeof said[0] !== 'string' || !isSource(said[1]))
      throw new Unfit(`pigment.light: ["words", "source"] is wanted, found ${JSON.stringify(said)}.`);
  for (const [what, said] of Object.entries((pigment.dates ?? {}) as Record<string, readonly unknown[]>))
    if (!DATES.includes(what) || !Number.isInteger(said[0]) || !isSource(said[1]))
      throw new Unfit(
        `pigment.dates: ${DATES.join(', ')}, each [year, "source"], are wanted, found ${what}: ${JSON.stringify(said)}.`,
      );
  const symbols = ((pigment.elements ?? []) as readonly unknown[])
    .slice(0, 3)
    .flatMap((words) => String(words).split(' '));
  if (symbols.some((symbol) => symbol && !/^[A-Z][a-z]?$/.test(symbol)))
    throw new Unfit(
      'pigment.elements: symbols parted by spaces are wanted, ["sure", "beside", "trace", "source"].',
    );
  for (const field of ['density', 'oilAbsorption']) {
    const [low, high] = pigment[field] as number[];
    if (!(typeof low === 'number' && typeof high === 'number' && low > 0 && low <= high))
      throw new Unfit(`pigment.${field}: low and high in order, above 0, are wanted.`);
  }
}

/** Everything the file asks for, as texts to be written. */
function made(file: string): readonly (readonly [URL, string])[] {
  let given: {
    readonly pigment?: Row;
    readonly sources?: Readonly<Record<string, unknown>>;
    readonly optics?: Kin | (Measured & { readonly volume?: number });
  };
  try {
    given = JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    throw new Unfit(`${file} cannot be read: ${(error as Error).message}`);
  }
  const { pigment, optics } = given;
  if (!pigment || !optics) throw new Unfit('"pigment" and "optics" are wanted, see DEVELOPERS.md.');
  for (const [id, source] of Object.entries(given.sources ?? {}))
    if (!Array.isArray(source) || typeof source[0] !== 'string' || !MARKS.includes(source[1]))
      throw new Unfit(
        `sources.${id}: ["what was read", "mark"] is wanted, the mark one of ${MARKS.join(', ')}.`,
      );
  const old = json(SOURCES) as Record<string, unknown>;
  const again = Object.keys(given.sources ?? {}).filter((id) => Object.hasOwn(old, id));
  if (again.length > 0) throw new Unfit(`sources.${again.join(', ')}: there already; give yours another id.`);
  const sources = { ...old, ...given.sources };
  const known = json(PIGMENTS) as readonly Row[];
  checked(pigment, sources, known);

  const id = String(pigment.id);
  const table = json(OPTICS) as Table;
  if (table.pigments.some((r) => r.id === id))
    throw new Unfit(`pigment.id: ‘${id}’ has an optical row already.`);
  const [density, absorption] = ['density', 'oilAbsorption'].map((field) => {
    const [low, high] = pigment[field] as [number, number];
    return (low + high) / 2;
  }) as [number, number];
  const written: (readonly [URL, string])[] = [];
  let row: OpticsRow;
  let texts = table.sources;
  if ('kin' in optics) {
    row = fromKin(id, optics, (pigment.transparency as [Transparency])[0]);
    written.push([KIN, `[\n${lines([...(json(KIN) as readonly unknown[]), { id, ...optics }])}\n]\n`]);
  } else if ('swatches' in optics) {
    // the usual paste, where the swatches' paint is not told
    const volume = optics.volume ?? 1 / (1 + (1.3 * absorption * density) / 93.5);
    const made = fromSwatches(table, id, optics, volume);
    row = made.row;
    texts = made.sources;
  } else throw new Unfit('optics: name a "kin" or give "swatches".');
  const entries = Object.entries(sources).map(([key, v]) => `${JSON.stringify(key)}:${JSON.stringify(v)}`);
  written.push(
    [PIGMENTS, `[\n${lines([...known, pigment])}\n]\n`],
    [SOURCES, `{\n${entries.join(',\n')}\n}\n`],
    [
      OPTICS,
      `{\n"unit": ${JSON.stringify(table.unit)},\n"sources": ${JSON.stringify(texts)},\n"pigments": [\n${lines([...table.pigments, row])}\n]\n}\n`,
    ],
  );
  return written;
}

function main([file, ...more]: readonly string[]): number {
  if (!file || more.length > 0) {
    console.error('Name one file: npm run add-pigment -- FILE.json (see DEVELOPERS.md)');
    return 2;
  }
  try {
    for (const [url, text] of made(file)) writeFileSync(url, text);
  } catch (error) {
    if (!(error instanceof Unfit)) throw error;
    console.error(`${error.message} Nothing was written.`);
    return 2;
  }
  const steps = [
    ['data-version.ts', '--unreleased'],
    ['data-page.ts'],
    ['cautions-page.ts'],
    ['language-page.ts'],
  ];
  for (const [script, ...args] of steps) {
    const { status } = spawnSync(process.execPath, [at(`build/${script}`).pathname, ...args], {
      stdio: 'inherit',
    });
    if (status !== 0) return 1;
  }
  console.log('Added. Look at the difference, then run: npm test');
  return 0;
}

process.exitCode = main(process.argv.slice(2));
