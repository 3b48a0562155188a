/**
 * Layers one on another on an area: internal reflectance from the support upwards, with what is uncertain about it, each
 * state remembered by all that lies in it. An edit in one layer so costs the layers above it and nothing else.
 */

import { type Lab, type Light, toLab } from '../optics/cie.ts';
import { adaptToD65, toScreen } from '../optics/css.ts';
import type { Confidence } from '../optics/data.ts';
import { deltaE00 } from '../optics/difference.ts';
import { fromLab } from '../optics/spectrum.ts';
import { layOn, toColour, WIPED_OUT_KEEPS } from '../optics/stack.ts';
import type { Surface } from '../optics/surface.ts';
import { type Lay, worse } from './lay.ts';
import { createMemo, type Memo } from './memo.ts';
import type { Calibration } from './swatches.ts';

/** A state of an area: what light meets from above. */
export interface State {
  readonly id: number;
  /** internal reflectance, and by how much each band may be off (one standard deviation, all bands together) */
  readonly reflectance: Float64Array;
  readonly doubt: Float64Array;
  /** ΔE00 to expect from the optical data alone */
  readonly residual: number;
  readonly face: Surface;
  readonly confidence: Confidence;
  readonly basis: readonly string[];
}

/** What is seen of a state. */
export interface View {
  readonly lab: Lab;
  readonly radius: number;
  readonly screen: () => ReturnType<typeof toScreen>;
}

export interface ColourMemo {
  readonly states: Memo<State>;
  readonly lays: Memo<{ readonly id: number; readonly lay: Lay }>;
  readonly views: Memo<View>;
  readonly calibrations: Memo<Calibration>;
  next: number;
}

export const createColourMemo = (): ColourMemo => ({
  states: createMemo(),
  lays: createMemo(),
  views: createMemo(),
  calibrations: createMemo(),
  next: 1,
});

/** ln of the factor by which what a wiped-out film leaves may be off. */
const WIPED_SPREAD = Math.LN2;
/** A state beneath whose reflectance still reaches the eye to this share takes part in confidence and grounds. */
const SHOWS_FROM = 0.15;
const STEP = 0.02;
const LEAST_RADIUS = 1;

const same = (face: Surface): string => (face.specular ? 's' : 'x');

/** The state after `lay` on `below`; undefined where nothing can be predicted. `wiped`: lifted out while open. */
export function after(
  memo: ColourMemo,
  below: State | undefined,
  { id, lay }: { readonly id: number; readonly lay: Lay },
  wiped: boolean,
): State | undefined {
  if (lay.kind === 'opaque') return memo.states.get(`o${id}`, () => opaque(memo, lay));
  if (lay.kind === 'unpredictable' || !below) return undefined;
  if (lay.kind === 'clear') {
    if (!lay.face && lay.basis.length === 0) return below;
    return memo.states.get(`${below.id}|${id}`, () => ({
      ...below,
      id: memo.next++,
      face: lay.face ?? below.face,
      residual: Math.hypot(below.residual, lay.doubt),
      basis: joined(lay.basis, below.basis),
    }));
  }
  return memo.states.get(`${below.id}|${id}${wiped ? 'w' : ''}`, () => filmed(memo, below, lay, wiped));
}

function opaque(memo: ColourMemo, lay: Lay & { readonly kind: 'opaque' }): State {
  const reflectance = fromLab(lay.lab, lay.face);
  return {
    id: memo.next++,
    reflectance,
    doubt: new Float64Array(reflectance.length),
    residual: lay.residual,
    face: lay.face,
    confidence: lay.confidence,
    basis: lay.basis,
  };
}

function filmed(memo: ColourMemo, below: State, lay: Lay & { readonly kind: 'film' }, wiped: boolean): State {
  const keep = wiped ? WIPED_OUT_KEEPS : 1;
  const spread = wiped ? Math.hypot(lay.spread, WIPED_SPREAD) : lay.spread;
  const over = (factor: number, rg: Float64Array) =>
    layOn({ pigments: lay.pigments, thickness: lay.thickness * factor, keep }, rg);
  const reflectance = over(1, below.reflectance);
  const thicker = over(Math.exp(spread), below.reflectance);
  const thinner = over(Math.exp(-spread), below.reflectance);
  // How much of a change beneath still shows: the slope of the film's answer, band by band.
  const stepped = over(
    1,
    below.reflectance.map((r) => r + (r > 0.5 ? -STEP : STEP)),
  );
  const doubt = new Float64Array(reflectance.length);
  let shows = 0;
  for (let i = 0; i < doubt.length; i++) {
    const slope = Math.min(1, Math.abs(stepped[i]! - reflectance[i]!) / STEP);
    shows += slope / doubt.length;
    doubt[i] = Math.hypot(slope * below.doubt[i]!, (thicker[i]! - thinner[i]!) / 2);
  }
  const reaches = shows >= SHOWS_FROM;
  return {
    id: memo.next++,
    reflectance,
    doubt,
    residual: Math.hypot(below.residual * shows, lay.residual * (1 - shows), lay.doubt),
    face: lay.face,
    confidence: reaches ? worse(lay.confidence, below.confidence) : lay.confidence,
    basis: reaches ? joined(lay.basis, below.basis) : lay.basis,
  };
}

/** Grounds of a colour, nearest first; those of dozens of layers beneath would say nothing any more. */
const MOST_GROUNDS = 12;
function joined(top: readonly string[], below: readonly string[]): readonly string[] {
  return [...new Set([...top, ...below])].slice(0, MOST_GROUNDS);
}

export function view(memo: ColourMemo, state: State, light: Light): View {
  return memo.views.get(`${state.id}${same(state.face)}${light}`, () => {
    const lab = seen(state.reflectance, state.face, light);
    const { doubt } = state;
    const up = seen(
      state.reflectance.map((r, i) => Math.min(1, r + doubt[i]!)),
      state.face,
      light,
    );
    const down = seen(
      state.reflectance.map((r, i) => Math.max(0, r - doubt[i]!)),
      state.face,
      light,
    );
    const off = (deltaE00(lab, up) + deltaE00(lab, down)) / 2;
    let screen: ReturnType<typeof toScreen> | undefined;
    return {
      lab,
      radius: Math.max(LEAST_RADIUS, Math.hypot(off, state.residual)),
      screen: () => {
        screen ??= toScreen(lab);
        return screen;
      },
    };
  });
}

/** CIELAB D65/2° of what looks under D65 as this does under `light`. */
function seen(internal: Float64Array, face: Surface, light: Light): Lab {
  const { lab, xyz } = toColour(internal, face, light);
  return light === 'D65' ? lab : toLab(adaptToD65(xyz, light), 'D65');
}
