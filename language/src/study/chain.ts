/**
 * Layers one on another on an area: internal reflectance from the support upwards, with what is uncertain about it, each
 * state remembered by all that lies in it. An edit in one layer so costs the layers above it and nothing else.
 */

import { createMemo, type Memo } from '../memory/memo.ts';
import { type Lab, type Light, toLab } from '../optics/cie.ts';
import { adaptToD65, toScreen } from '../optics/css.ts';
import { deltaE00 } from '../optics/difference.ts';
import { smoothSpectrum } from '../optics/spectrum.ts';
import { layOn, toColour, WIPED_OUT_KEEPS } from '../optics/stack.ts';
import { faceShowing, inwardInto, type Surface } from '../optics/surface.ts';
import { BANDS, flat } from '../optics/wavelengths.ts';
import type { State } from '../results/state.ts';
import { type Lay, worse } from './lay.ts';
import type { Calibration } from './swatches.ts';

/** What is seen of a state. */
export interface View {
  readonly lab: Lab;
  readonly radius: number;
  readonly screen: () => ReturnType<typeof toScreen>;
}

export interface ColourMemo {
  readonly states: Memo<State>;
  readonly lays: Memo<Lay>;
  readonly views: Memo<View>;
  readonly calibrations: Memo<Calibration>;
}

export const createColourMemo = (): ColourMemo => ({
  states: createMemo(),
  lays: createMemo(),
  views: createMemo(),
  calibrations: createMemo(),
});

/** ln of the factor by which what a wiped-out film leaves may be off. */
const WIPED_SPREAD = Math.LN2;
/** A state beneath whose reflectance still reaches the eye to this share takes part in confidence and grounds. */
const SHOWS_FROM = 0.15;
const LEAST_RADIUS = 1;

/** A layer laid on what lies beneath. */
interface Laid<L> {
  readonly below: State;
  readonly lay: L;
  readonly wiped: boolean;
}

/** The state after `lay` on `below`; undefined where nothing can be predicted. `wiped`: lifted out while open. */
export function after(
  memo: ColourMemo,
  below: State | undefined,
  lay: Lay,
  wiped: boolean,
): State | undefined {
  if (lay.kind === 'opaque') return memo.states.get(lay, opaque);
  if (lay.kind === 'unpredictable' || !below) return undefined;
  if (lay.kind === 'clear')
    return lay.face || lay.basis.length > 0 ? memo.states.get({ below, lay }, cleared) : below;
  return memo.states.get({ below, lay, wiped }, filmed);
}

function opaque(lay: OpaqueLay): State {
  // What a painter states, or a material usually shows, is what is seen: the face must leave room for it.
  const { seen: shown } = smoothSpectrum(lay.lab);
  const face = faceShowing(shown, lay.face);
  const reflectance = flat(0);
  inwardInto(reflectance, shown, face);
  return {
    reflectance,
    doubt: new Float64Array(reflectance.length),
    residual: lay.residual,
    face,
    confidence: lay.confidence,
    basis: lay.basis,
  };
}

function cleared({ below, lay }: Omit<Laid<Lay & { readonly kind: 'clear' }>, 'wiped'>): State {
  return {
    ...below,
    face: lay.face ?? below.face,
    residual: Math.hypot(below.residual, lay.doubt),
    confidence: lay.doubt > 0 ? 'D' : below.confidence,
    basis: joined(lay.basis, below.basis),
  };
}

type OpaqueLay = Lay & { readonly kind: 'opaque' };
type FilmLay = Lay & { readonly kind: 'film' };

/**
 * A film as it answers whatever lies beneath: R = R0 + T² Rg / (1 − R0 Rg) (Kubelka, JOSA 44 (1954) 330), band by band.
 * Made once for a film and used on every area it lies on.
 */
interface Plate {
  readonly r0: Float64Array;
  readonly t2: Float64Array;
}

function plate({ pigments, thickness }: FilmLay, factor: number): Plate {
  const film = { pigments, thickness: thickness * factor };
  const r0 = layOn(film, flat(0));
  const t2 = layOn(film, flat(1));
  for (let i = 0; i < BANDS; i++) t2[i] = Math.max(0, (t2[i]! - r0[i]!) * (1 - r0[i]!));
  return { r0, t2 };
}

/** As laid, laid thicker, laid thinner. */
interface Plates {
  readonly usual: Plate;
  readonly thick: Plate;
  readonly thin: Plate;
}
const whole = new WeakMap<FilmLay, Plates>();
const lifted = new WeakMap<FilmLay, Plates>();

function platesOf(lay: FilmLay, wiped: boolean): Plates {
  const made = wiped ? lifted : whole;
  const known = made.get(lay);
  if (known) return known;
  const keep = wiped ? WIPED_OUT_KEEPS : 1;
  const spread = wiped ? Math.hypot(lay.spread, WIPED_SPREAD) : lay.spread;
  const plates = {
    usual: plate(lay, keep),
    thick: plate(lay, keep * Math.exp(spread)),
    thin: plate(lay, keep * Math.exp(-spread)),
  };
  made.set(lay, plates);
  return plates;
}

/** Nothing that is opaque lets anything through, however bright it is beneath. */
const through = ({ r0, t2 }: Plate, i: number, g: number): number =>
  t2[i]! > 0 ? r0[i]! + (t2[i]! * g) / (1 - r0[i]! * g) : r0[i]!;

function filmed({ below, lay, wiped }: Laid<FilmLay>): State {
  const { usual, thick, thin } = platesOf(lay, wiped);
  const reflectance = new Float64Array(BANDS);
  const doubt = new Float64Array(BANDS);
  let shows = 0;
  for (let i = 0; i < BANDS; i++) {
    const g = below.reflectance[i]!;
    reflectance[i] = through(usual, i, g);
    // How much of a change beneath still shows: the slope of the film's answer.
    const slope = usual.t2[i]! > 0 ? usual.t2[i]! / (1 - usual.r0[i]! * g) ** 2 : 0;
    const shown = Math.min(1, slope);
    shows += shown / BANDS;
    const laid = (through(thick, i, g) - through(thin, i, g)) / 2;
    doubt[i] = Math.sqrt((shown * below.doubt[i]!) ** 2 + laid * laid);
  }
  const reaches = shows >= SHOWS_FROM;
  return {
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

export const view = (memo: ColourMemo, state: State, light: Light): View =>
  memo.views.get({ state, light }, viewed);

function viewed({ state, light }: { readonly state: State; readonly light: Light }): View {
  const { reflectance, doubt, face } = state;
  const lab = seen(reflectance, face, light);
  const up = seen(
    reflectance.map((r, i) => Math.min(1, r + doubt[i]!)),
    face,
    light,
  );
  const down = seen(
    reflectance.map((r, i) => Math.max(0, r - doubt[i]!)),
    face,
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
}

/** CIELAB D65/2° of what looks under D65 as this does under `light`. */
function seen(internal: Float64Array, face: Surface, light: Light): Lab {
  const { lab, xyz } = toColour(internal, face, light);
  return light === 'D65' ? lab : toLab(adaptToD65(xyz, light), 'D65');
}
