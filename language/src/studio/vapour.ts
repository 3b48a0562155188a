/**
 * Solvent vapour in a room, as a well-mixed box: what evaporates spreads evenly and leaves with the air that is changed.
 * Volumes in m³, air changes per hour, times in hours, masses in mg, concentrations in mg/m³ or ppm by volume at 25 °C
 * and 760 mmHg. The equations are the usual ones of industrial hygiene; worked numbers are in `docs/studio.md`.
 */

/** l/mol of a gas at 25 °C and 760 mmHg, as the published limits are converted (ACGIH, NIOSH). */
export const MOLAR_VOLUME = 24.45;

const ATMOSPHERE_KPA = 101.325;
const KPA_PER_MMHG = ATMOSPHERE_KPA / 760;

export const ppmToMgPerM3 = (ppm: number, molarMass: number): number => (ppm * molarMass) / MOLAR_VOLUME;

export const mgPerM3ToPpm = (mgPerM3: number, molarMass: number): number =>
  (mgPerM3 * MOLAR_VOLUME) / molarMass;

export const mmHgToKPa = (mmHg: number): number => mmHg * KPA_PER_MMHG;

/** ppm that the air cannot exceed: the share of the vapour pressure (kPa) in one atmosphere. */
export const saturationPpm = (vapourPressureKPa: number): number =>
  1e6 * Math.min(1, vapourPressureKPa / ATMOSPHERE_KPA);

export interface Room {
  /** m³ */
  readonly volume: number;
  /** per hour; 0 is a sealed room */
  readonly airChanges: number;
}

/** Why no concentration can be told, in words for the painter; undefined where it can. */
export function roomFault({ volume, airChanges }: Room, hours: number): string | undefined {
  if (!(volume > 0) || !Number.isFinite(volume)) return 'a room of this size holds no air to tell a share of';
  if (!(airChanges >= 0)) return 'air changes per hour are 0 or more';
  if (!(hours >= 0)) return 'a session lasts 0 hours or more';
  return undefined;
}

/** (1 − e^−x) / x without its overflow and its 0/0: what share of a steady source is still in the air. */
const remaining = (x: number): number => (x > 0 ? -Math.expm1(-x) / x : 1);

/**
 * mg/m³ at the end of `hours` in which `mg` evaporated steadily. Well mixed at a factor of 1; a factor K says that the
 * air changed does only 1/K of its work. Undefined where `roomFault` has a reason, or the figure outgrows numbers.
 */
export function concentration(mg: number, hours: number, room: Room, mixing = 1): number | undefined {
  if (roomFault(room, hours) || !(mg >= 0) || !(mixing > 0)) return undefined;
  const c = (mg / room.volume) * remaining((room.airChanges / mixing) * hours);
  return Number.isFinite(c) ? c : undefined;
}

/** mg/m³ some hours after the last evaporated. */
export const decayed = (mgPerM3: number, hours: number, airChanges: number): number =>
  mgPerM3 * Math.exp(-Math.max(0, airChanges) * Math.max(0, hours));

/** Hours of airing that bring one concentration down to another; undefined in a sealed room, where none do. */
export function purgeHours(from: number, to: number, airChanges: number): number | undefined {
  if (!(from > to)) return 0;
  if (!(to > 0) || !(airChanges > 0)) return undefined;
  const hours = (Math.log(from) - Math.log(to)) / airChanges;
  return Number.isFinite(hours) ? hours : undefined;
}

/** ml that bring a sealed room to a concentration in mg/m³; density in g/ml. */
export const mlToReach = (mgPerM3: number, volume: number, density: number): number =>
  (mgPerM3 * volume) / (density * 1000);

/** Sum of concentration over limit; above 1 the mixture is over, though no part of it may be (OSHA 1910.1000(d)(2), memory). */
export const mixtureRatio = (
  parts: readonly { readonly concentration: number; readonly limit: number }[],
): number => parts.reduce((sum, p) => sum + p.concentration / p.limit, 0);

/**
 * Air changes per hour that keep a steady source at its limit to the end of the session. `sealedRatio` is concentration
 * over limit in the same room without any air change (of a mixture, the sum). Undefined where the session has no length:
 * then no airing is quick enough.
 */
export function neededAirChanges(sealedRatio: number, hours: number, mixing = 1): number | undefined {
  if (!(sealedRatio > 1)) return 0;
  if (!(hours > 0) || !Number.isFinite(sealedRatio)) return undefined;
  // remaining(x) ≤ 1/x, so the root lies below x = sealedRatio.
  let low = 0;
  let high = sealedRatio;
  for (let i = 0; i < 200 && high - low > 1e-12 * high; i++) {
    const middle = (low + high) / 2;
    if (sealedRatio * remaining(middle) > 1) low = middle;
    else high = middle;
  }
  const changes = (high * mixing) / hours;
  return Number.isFinite(changes) ? changes : undefined;
}

/**
 * m³ of fresh air an hour that keep a steady source at its limit for ever, in a room of any size. `airToDilute` is the
 * m³ of air that would dilute all that evaporates in the session to the limit (of a mixture, the sum).
 */
export function neededFreshAir(airToDilute: number, hours: number, mixing = 1): number | undefined {
  if (!(airToDilute >= 0) || !(hours > 0)) return undefined;
  const flow = (airToDilute * mixing) / hours;
  return Number.isFinite(flow) ? flow : undefined;
}
