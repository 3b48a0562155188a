/** Reads the measured oil films: one film is one paint or mixture, drawn over a white and a black card. */
import { BANDS, type Spectrum, wavelengths } from '../../src/optics/wavelengths.ts';
import { readTable } from './csv.ts';

export interface MeasuredFilm {
  readonly id: string;
  /** paint name to share by mass of paint; sums to 1 */
  readonly mass: ReadonlyMap<string, number>;
  /** reflectances seen in air, specular included */
  readonly overWhite: Spectrum;
  readonly overBlack: Spectrum;
  readonly white: Spectrum;
  readonly black: Spectrum;
}

const SIDES = {
  paint_over_white: 'overWhite',
  paint_over_black: 'overBlack',
  bare_white: 'white',
  bare_black: 'black',
} as const;

/** Parses `oil_films_measured.csv`: film, composition_mass, side, then reflectance by nm. */
export function readFilms(csv: string): MeasuredFilm[] {
  const films = new Map<string, { id: string; mass: Map<string, number>; sides: Map<string, Spectrum> }>();
  for (const row of readTable(csv)) {
    const id = row.film!;
    const film = films.get(id) ?? { id, mass: composition(row.composition_mass!), sides: new Map() };
    const side = SIDES[row.side as keyof typeof SIDES];
    if (!side) throw new Error(`film ${id}: side “${row.side}” is none of ${Object.keys(SIDES).join(', ')}`);
    film.sides.set(side, spectrum(row, `film ${id}, ${row.side}`));
    films.set(id, film);
  }
  return [...films.values()].map(({ id, mass, sides }) => {
    const side = (name: string): Spectrum => {
      const found = sides.get(name);
      if (!found) throw new Error(`film ${id}: no row for ${name}`);
      return found;
    };
    return {
      id,
      mass,
      overWhite: side('overWhite'),
      overBlack: side('overBlack'),
      white: side('white'),
      black: side('black'),
    };
  });
}

/** A row's values on our grid. Bands the file does not have are held at the nearest it has. */
export function spectrum(row: Readonly<Record<string, string>>, what: string): Spectrum {
  const known = Object.keys(row)
    .map(Number)
    .filter((nm) => nm > 0);
  const [first, last] = [Math.min(...known), Math.max(...known)];
  const out = new Float64Array(BANDS);
  wavelengths.forEach((nm, i) => {
    const value = Number(row[String(Math.min(last, Math.max(first, nm)))]);
    if (!Number.isFinite(value)) throw new Error(`${what}: no value at ${nm} nm`);
    out[i] = value;
  });
  return out;
}

const composition = (text: string): Map<string, number> =>
  new Map(
    text.split(' ').map((part) => {
      const [name, share] = part.split(':') as [string, string];
      return [name, Number(share)];
    }),
  );
