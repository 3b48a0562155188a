/** Pigments known to darken, grey or turn with age, whatever light does. One table; only where something says so. */
import type { Pigment, Source } from '../materials/types.ts';

export interface Darkening {
  /** Colour Index names, or the catalogue's id where a pigment has none */
  readonly codes: readonly string[];
  /** the second word, where only one pigment of the code does it */
  readonly varieties?: readonly string[];
  readonly what: string;
  readonly source: Source;
}

const seen = (text: string): Source => ({ text, mark: 'published' });
const recalled: Source = { text: 'from memory', mark: 'memory' };

export const DARKENING: readonly Darkening[] = [
  {
    codes: ['PB32'],
    what: 'greys in oil: its glass lies close to oil in refraction and loses potassium; lead white with it holds this back a little',
    source: seen("Pigments through the Ages (IDEA, from Artists' Pigments), smalt"),
  },
  {
    codes: ['PG20'],
    what: 'can turn from green to brown and black in oil',
    source: seen('CAMEO (MFA Boston), Verdigris'),
  },
  {
    codes: ['copper-resinate'],
    what: 'turns brown in light and air',
    source: recalled,
  },
  {
    codes: ['PG21'],
    what: 'blackens where sulphides reach it',
    source: seen("Pigments through the Ages (IDEA, from Artists' Pigments), emerald green"),
  },
  {
    codes: ['PB30'],
    what: 'sinks in oil and turns greener',
    source: seen('CAMEO (MFA Boston), Characteristics of Common Blue Pigments'),
  },
  {
    codes: ['PBr7'],
    varieties: ['raw-umber', 'burnt-umber'],
    what: 'darkens with age, from the oil it takes',
    source: seen('Gettens & Stout, Painting Materials (1942) p.168'),
  },
  {
    codes: ['PBr7'],
    varieties: ['raw-sienna'],
    what: 'sinks in, and darkens where it is fed too much oil',
    source: recalled,
  },
  {
    codes: ['PR106'],
    what: 'may blacken in strong light',
    source: seen("Pigments through the Ages (IDEA, from Artists' Pigments), vermilion"),
  },
  {
    codes: ['PR105'],
    what: 'whitens or blackens in air',
    source: seen("Laurie, The Painter's Methods & Materials p.87"),
  },
  {
    codes: ['PY34'],
    what: 'browns in light and with sulphides',
    source: { text: 'PrintWiki, Chrome Yellows', mark: 'second-hand' },
  },
  {
    codes: ['PY36', 'PY32'],
    what: 'turns greenish to grey-green in light',
    source: seen(
      'Gettens & Stout, Painting Materials (1942) p.183, of zinc yellow; strontium yellow from memory',
    ),
  },
  {
    codes: ['PW5'],
    what: 'may darken in strong sun',
    source: seen('Gardner, Paint Technology and Tests (1911), ch. III'),
  },
  {
    codes: ['NBr8'],
    what: 'fades and turns cold, and cracks what lies over it',
    source: { text: 'French Wikipedia, Terre de Cassel, after Petit, Roire and Valot', mark: 'second-hand' },
  },
  {
    codes: ['PY40'],
    what: 'can turn brown in oil and in tints',
    source: seen('Gettens & Stout, Painting Materials (1942) p.110'),
  },
];

/** What a pigment is known to turn to with age; undefined where nothing is told. */
export const darkens = (pigment: Pigment): Darkening | undefined =>
  DARKENING.find(
    (d) =>
      d.codes.includes(pigment.code ?? pigment.id) &&
      (!d.varieties || (pigment.variety !== undefined && d.varieties.includes(pigment.variety))),
  );
