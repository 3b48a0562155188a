/**
 * Layers one on another on an area: how each stack answers light, from the support upwards, with what is uncertain about
 * it, each state remembered by all that lies in it. An edit in one layer so costs the layers above it and nothing else.
 */

import { createMemo, type Memo } from '../memory/memo.ts';
import { type Lab, type Light, toLab } from '../optics/cie.ts';
import { adaptToD65, toScreen } from '../optics/css.ts';
import { deltaE00 } from '../optics/difference.ts';
import type { Plate } from '../optics/plate.ts';
import { smoothSpectrum } from '../optics/spectrum.ts';
import { plateOf, toColour, WIPED_OUT_KEEPS } from '../optics/stack.ts';
import { faceShowing, inwardInto, type Surface } from '../optics/surface.ts';
import { lay as laid, lambert, type Stack, scaled, sentBack } from '../optics/transport.ts';
import { BANDS, flat } from '../optics/wavelengths.ts';
import type { Solved, State } from '../results/state.ts';
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
  readonly solved: Memo<Solved>;
}

export const createColourMemo = (): ColourMemo => ({
  states: createMemo(),
  lays: createMemo(),
  views: createMemo(),
  calibrations: createMemo(),
  solved: createMemo(),
});

/** A memory of its own that knows what another knows now. */
export const forkColourMemo = (memo: ColourMemo): ColourMemo => ({
  states: memo.states.fork(),
  lays: memo.lays.fork(),
  views: memo.views.fork(),
  calibrations: memo.calibrations.fork(),
  solved: memo.solved.fork(),
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
  const internal = flat(0);
  inwardInto(internal, shown, face);
  return {
    stack: lambert(internal),
    doubt: flat(0),
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
    usual: plateOf({ ...lay, keep }),
    thick: plateOf({ ...lay, keep: keep * Math.exp(spread) }),
    thin: plateOf({ ...lay, keep: keep * Math.exp(-spread) }),
  };
  made.set(lay, plates);
  return plates;
}

/** By how much what lies beneath is moved, to see how much of it shows. */
const MOVED = 0.98;

function filmed({ below, lay, wiped }: Laid<FilmLay>): State {
  const { usual, thick, thin } = platesOf(lay, wiped);
  const stack = laid(usual, below.stack);
  const back = sentBack(stack);
  const beneath = sentBack(below.stack);
  const moved = sentBack(laid(usual, scaled(below.stack, MOVED)));
  const more = sentBack(laid(thick, below.stack));
  const less = sentBack(laid(thin, below.stack));
  const doubt = new Float64Array(BANDS);
  let shows = 0;
  for (let i = 0; i < BANDS; i++) {
    if (!(back[i]! > 0)) continue;
    // How much of a change beneath still shows, in all and as a share of what is sent back.
    const change = (back[i]! - moved[i]!) / (1 - MOVED);
    shows += Math.min(1, change / Math.max(1e-9, beneath[i]!)) / BANDS;
    doubt[i] = Math.hypot(change * below.doubt[i]!, (more[i]! - less[i]!) / 2) / back[i]!;
  }
  const reaches = shows >= SHOWS_FROM;
  return {
    stack,
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
  const { stack, doubt, face } = state;
  const lab = seen(stack, face, light);
  const moved = (sign: number): Lab =>
    seen(
      scaled(
        stack,
        doubt.map((d) => 1 + sign * d),
      ),
      face,
      light,
    );
  const off = (deltaE00(lab, moved(1)) + deltaE00(lab, moved(-1))) / 2;
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
export function seen(stack: Stack, face: Surface, light: Light): Lab {
  const { lab, xyz } = toColour(stack, face, light);
  return light === 'D65' ? lab : toLab(adaptToD65(xyz, light), 'D65');
}
