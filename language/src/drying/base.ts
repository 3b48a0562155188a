/** Touch-dry time of the binder alone: 30 µm, 20 °C, no pigment. */
import type { Interval } from '../materials/interval.ts';
import type { Binder, BinderKind } from '../materials/types.ts';
import { ALKYD } from './settings.ts';

/** Binders that dry by taking up oxygen. The rest dry by losing water or spirit, or not at all. */
const OXIDISING: readonly BinderKind[] = ['drying oil', 'semi-drying oil', 'alkyd'];
export const oxidises = (binder: Binder): boolean => OXIDISING.includes(binder.kind);

export interface BinderShare {
  readonly binder: Binder;
  /** volume of its solids in the film; only the ratio counts */
  readonly volume: number;
}

/** From this share of the binder upwards, oil or alkyd set the pace and what merely evaporates is left out. */
const PACE_FROM = 0.05;

/** Days of one binder. The likely value is the geometric middle; of alkyd the published time. */
export function baseOf(binder: Binder): Interval | undefined {
  const days = binder.touchDry;
  if (!days || !(days.low > 0)) return undefined;
  const middle = Math.sqrt(days.low * days.high);
  const likely = binder.kind === 'alkyd' ? Math.min(days.high, Math.max(days.low, ALKYD.touchDry)) : middle;
  return { low: days.low, likely, high: days.high };
}

/** Which binders of a film set its pace. */
export function pace(binders: readonly BinderShare[]): BinderShare[] {
  const drying = binders.filter((b) => b.volume > 0 && baseOf(b.binder));
  const all = drying.reduce((sum, b) => sum + b.volume, 0);
  const oily = drying.filter((b) => oxidises(b.binder));
  const share = oily.reduce((sum, b) => sum + b.volume, 0);
  return share > 0 && share >= PACE_FROM * all ? oily : drying.filter((b) => !oxidises(b.binder));
}

/** Days of a blend: rates averaged by volume. Undefined where nothing in it dries. */
export function blend(binders: readonly BinderShare[]): Interval | undefined {
  const setting = pace(binders);
  const whole = setting.reduce((sum, b) => sum + b.volume, 0);
  if (!(whole > 0)) return undefined;
  const days = (end: keyof Interval): number =>
    1 / setting.reduce((rate, b) => rate + b.volume / whole / (baseOf(b.binder) as Interval)[end], 0);
  return { low: days('low'), likely: days('likely'), high: days('high') };
}

/** What sets when its spirit has left it, before it dries. */
export const sets = ({ kind }: Binder): boolean => kind === 'alkyd' || kind === 'resin';

/** Share of alkyd in what sets the pace. */
export function alkydShare(binders: readonly BinderShare[]): number {
  const setting = pace(binders);
  const whole = setting.reduce((sum, b) => sum + b.volume, 0);
  const alkyd = setting.reduce((sum, b) => sum + (b.binder.kind === 'alkyd' ? b.volume : 0), 0);
  return whole > 0 ? alkyd / whole : 0;
}
