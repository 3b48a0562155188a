/** Predicted colours of a study: after every layer on every area, and how far the last is from what is wanted there. */
import { parseColour } from '../optics/css.ts';
import { deltaE00 } from '../optics/difference.ts';
import type { Effect, Layer, OwnPigment, Plan } from '../plan/plan.ts';
import type { Solved, State } from '../results/state.ts';
import type { AreaStudy, ColourOn } from '../results/study.ts';
import { after, type ColourMemo, view } from './chain.ts';
import { WITHIN } from './defaults.ts';
import { solved } from './effect.ts';
import type { LayerFilm } from './film.ts';
import { bareSupport, type Lay, layOf, layPlan, wantedFace } from './lay.ts';
import type { Stacks } from './stacks.ts';
import { type Calibration, calibrated } from './swatches.ts';

export { type ColourMemo, createColourMemo, forkColourMemo } from './chain.ts';

export interface Colouring {
  layer(index: number): readonly ColourOn[];
  buildUp(area: string): ReturnType<AreaStudy['buildUp']>;
  target(area: string): ReturnType<AreaStudy['target']>;
  /** internal state of an area beneath a layer (or after all of them), for matching */
  beneath(area: string, index?: number): State | undefined;
  calibration(own: OwnPigment): Calibration;
  /** the film with which a layer has the lightness wanted, where that is to be seen; `film`: its own, however thick */
  solve(layer: Layer, film: LayerFilm, effect: Effect): (Solved & { readonly area: string }) | undefined;
}

export function colouring(
  plan: Plan,
  films: readonly LayerFilm[],
  stacks: Stacks,
  memo: ColourMemo,
): Colouring {
  memo.states.turn();
  memo.lays.turn();
  memo.views.turn();
  memo.calibrations.turn();
  memo.solved.turn();
  const wanted = wantedFace(plan);
  const calibrations = new Map<OwnPigment, Calibration>();
  const own = (pigment: OwnPigment): Calibration => {
    const known = calibrations.get(pigment) ?? calibrated(pigment, memo.calibrations, wanted);
    calibrations.set(pigment, known);
    return known;
  };
  const light = plan.studio.lightSource?.value ?? 'D65';

  // One by one: what lies above a film that is solved for is not known yet when that asks what lies beneath it.
  const lays: Lay[] = [];
  const layAs = (layer: Layer, film: LayerFilm): Lay =>
    memo.lays.get(
      layPlan(layer, film, wanted, (pigment) => own(pigment).data),
      layOf,
    );
  const layAt = (index: number): Lay => {
    lays[index] ??= layAs(plan.layers[index]!, films[index]!);
    return lays[index];
  };
  const wiped = plan.layers.map((l) => new Set(l.wipeOut.flatMap((w) => w.areas)));
  const bottom = bareSupport(plan);

  // Per area the states so far, from the bare support upwards; never more of them than were asked for.
  const states = new Map<string, (State | undefined)[]>();
  const state = (area: string, count: number): State | undefined => {
    const stack = stacks.on.get(area);
    if (!stack) return undefined;
    let known = states.get(area);
    if (!known) {
      known = [after(memo, undefined, bottom, false)];
      states.set(area, known);
    }
    for (let i = known.length; i <= count; i++) {
      const index = stack[i - 1]!;
      known.push(after(memo, known[i - 1], layAt(index), wiped[index]!.has(area)));
    }
    return known[count];
  };

  const colourOn = (area: string, at: State): ColourOn => {
    const seen = view(memo, at, light);
    return {
      area,
      lab: seen.lab,
      get hex() {
        return seen.screen().hex;
      },
      get outOfGamut() {
        return seen.screen().outOfGamut;
      },
      radius: seen.radius,
      confidence: at.confidence,
      basis: at.basis,
    };
  };
  const on = (area: string, index: number): ColourOn[] => {
    const beneath = stacks.depth[index]?.get(area);
    const at = beneath === undefined ? undefined : state(area, beneath + 1);
    return at ? [colourOn(area, at)] : [];
  };

  const beneath = (area: string, index: number): State | undefined => {
    const stack = stacks.on.get(area);
    return stack && state(area, stacks.depth[index]?.get(area) ?? stack.filter((i) => i < index).length);
  };

  return {
    solve(layer, film, effect) {
      const lay = layAs(layer, film);
      if (lay.kind !== 'film' || lay.pigments.length === 0) return undefined;
      const lies = layer.areas.filter((a) => !wiped[layer.index]?.has(a));
      const meant = effect.in ? lies.filter((a) => effect.in?.areas.includes(a)) : lies;
      let darkest: { readonly area: string; readonly below: State; readonly l: number } | undefined;
      for (const area of meant) {
        const below = beneath(area, layer.index);
        if (!below) continue;
        const l = view(memo, below, light).lab[0];
        if (!darkest || l < darkest.l) darkest = { area, below, l };
      }
      if (!darkest) return undefined;
      const { area, below } = darkest;
      const { value } = effect.lightness;
      const wants = { below, lay, light, lightness: value, kind: layer.kind, coats: film.coats };
      return { area, ...memo.solved.get(wants, solved) };
    },
    layer: (index) => (plan.layers[index]?.areas ?? []).flatMap((area) => on(area, index)),
    buildUp: (area) =>
      (stacks.on.get(area) ?? []).flatMap((index) =>
        on(area, index).map((colour) => ({ layer: plan.layers[index]!.name, index, colour })),
      ),
    target(area) {
      const target = plan.targets.findLast((t) => t.in?.areas.includes(area));
      const css = target?.colour?.css;
      const lab = css === undefined ? undefined : parseColour(css);
      if (!target || !lab || css === undefined) return undefined;
      const last = (stacks.on.get(area) ?? []).length;
      const at = last > 0 ? state(area, last) : undefined;
      const within = target.within?.value.likely ?? WITHIN;
      return { lab, css, deltaE00: at ? deltaE00(lab, view(memo, at, light).lab) : undefined, within };
    },
    calibration: own,
    beneath(area, index) {
      if (index !== undefined) return beneath(area, index);
      const stack = stacks.on.get(area);
      return stack && state(area, stack.length);
    },
  };
}
