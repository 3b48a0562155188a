/**
 * Film thickness, spread and consumption. Thickness in µm, areas in m², volumes in litres, masses in g; volume solids as
 * a fraction. Definition of volume solids: ISO 3233, ASTM D2697 (from memory).
 */

/** µm of wet paint that dry to `dry` µm. */
export const wetFilm = (dry: number, volumeSolids: number): number => dry / volumeSolids;

/** m² covered by one litre of paint at a wet film. */
export const spreadingRate = (wet: number): number => 1000 / wet;

/** µm of wet film that one litre leaves on so many m². */
export const wetFilmFromSpread = (squareMetresPerLitre: number): number => 1000 / squareMetresPerLitre;

/** Litres of paint for an area at a wet film: 1 µm over 1 m² is 1 ml. */
export const paintVolume = (squareMetres: number, wet: number): number => (squareMetres * wet) / 1000;

/** g of paint; density in g/ml. */
export const paintMass = (litres: number, density: number): number => litres * 1000 * density;
