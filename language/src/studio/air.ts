/**
 * The air of the sitting in which most evaporates, against the published limits. Everything is taken to evaporate
 * steadily within the session; the concentration told is that at its end, the highest, which is held against limits
 * meant for the average of a working day: on the safe side. An estimate, never a measurement.
 */
import { exactly, type Interval, mapInterval, plus, scale } from '../materials/interval.ts';
import type { Solvent } from '../materials/types.ts';
import type { Layer, Plan } from '../plan/plan.ts';
import type { Air, LayerStudy } from '../results/study.ts';
import { type Conditions, conditions, emissionAssumptions } from './air-assumptions.ts';
import { countedLimit, dayLimits, limitName, quarterLimits, type RankedLimit } from './air-limits.ts';
import { type Emission, emissions, thinners } from './emissions.ts';
import { type LiquidMemo, middle } from './recipe.ts';
import { MIXING } from './settings.ts';
import { type Studied, supportArea } from './surface.ts';
import {
  concentration,
  mgPerM3ToPpm,
  neededAirChanges,
  neededFreshAir,
  ppmToMgPerM3,
  saturationPpm,
} from './vapour.ts';

interface Sitting {
  readonly layer: string;
  readonly parts: readonly Emission[];
  /** g by solvent */
  readonly grams: ReadonlyMap<Solvent, Interval>;
  /** m³ of air that dilute all of it to the limit */
  readonly dilute: Interval;
}

function sitting(layer: string, parts: readonly Emission[]): Sitting {
  const grams = new Map<Solvent, Interval>();
  let dilute = exactly(0);
  for (const part of parts) {
    grams.set(part.solvent, plus(grams.get(part.solvent) ?? exactly(0), part.grams));
    const limit = countedLimit(part.solvent);
    if (limit) dilute = plus(dilute, scale(part.grams, 1000 / limit.limit.mg));
  }
  return { layer, parts, grams, dilute };
}

/** The sitting of a layer with all that it rests on besides the layer as it stands. */
interface Known {
  readonly areas: Plan['areas'];
  readonly composition: LayerStudy['composition'];
  readonly support: Interval | undefined;
  readonly brushes: Solvent | undefined;
  readonly sitting: Sitting | undefined;
}

const known = new WeakMap<Layer, Known>();

const isSame = (a: Interval | undefined, b: Interval | undefined): boolean =>
  a === b || (a?.low === b?.low && a?.likely === b?.likely && a?.high === b?.high);

/** The sitting that needs most air. Coats of one layer are alike, so one stands for all. */
function worstSitting(study: Studied, support: Interval | undefined): Sitting | undefined {
  const memo: LiquidMemo = new Map();
  const thinner = thinners(study, memo);
  const { areas } = study.plan;
  let worst: Sitting | undefined;
  for (const of of study.layers) {
    const { layer, composition } = of;
    const brushes = thinner(layer);
    let here = known.get(layer);
    if (
      here?.areas !== areas ||
      here.composition !== composition ||
      here.brushes !== brushes ||
      !isSame(here.support, support)
    ) {
      const parts = emissions(study, of, support, memo, brushes);
      here = {
        areas,
        composition,
        support,
        brushes,
        sitting: parts.length > 0 ? sitting(layer.name, parts) : undefined,
      };
      known.set(layer, here);
    }
    const { sitting: own } = here;
    if (own && (!worst || own.dilute.likely > worst.dilute.likely)) worst = own;
  }
  return worst;
}

const all = (low?: number, likely?: number, high?: number): Interval | undefined =>
  low === undefined || likely === undefined || high === undefined ? undefined : { low, likely, high };

/** mg/m³ of one solvent at the end of the session, no more than its vapour can fill the air with. */
function inAir(grams: Interval, solvent: Solvent, room: Interval, c: Conditions): Interval | undefined {
  const most =
    solvent.vapourPressure && solvent.molarMass
      ? ppmToMgPerM3(saturationPpm(solvent.vapourPressure.high), middle(solvent.molarMass))
      : Number.POSITIVE_INFINITY;
  const at = (g: number, volume: number, airChanges: number, hours: number, mixing: number) => {
    const ppm = concentration(g * 1000, hours, { volume, airChanges }, mixing);
    return ppm === undefined ? undefined : Math.min(ppm, most);
  };
  return all(
    at(grams.low, room.high, c.airChanges.high, c.hours.high, MIXING.low),
    at(grams.likely, room.likely, c.airChanges.likely, c.hours.likely, MIXING.likely),
    at(grams.high, room.low, c.airChanges.low, c.hours.low, MIXING.high),
  );
}

const words = (limit: RankedLimit | undefined) =>
  limit && { ppm: limit.ppm, mgPerM3: limit.mgPerM3, source: `${limitName(limit)}: ${limit.source.text}` };

function solventRow(solvent: Solvent, grams: Interval, c: Conditions): Air['solvents'][number] {
  const mgPerM3 = c.room && inAir(grams, solvent, c.room, c);
  const molarMass = solvent.molarMass && middle(solvent.molarMass);
  return {
    name: solvent.id,
    grams,
    ppm: mgPerM3 && molarMass ? mapInterval(mgPerM3, (mg) => mgPerM3ToPpm(mg, molarMass)) : undefined,
    mgPerM3,
    limit: words(dayLimits(solvent)[0]),
    ceiling: words(quarterLimits(solvent)[0]),
    limits: [...dayLimits(solvent), ...quarterLimits(solvent)],
  };
}

/** Sum of concentration over limit; undefined where one of them cannot be told. */
function ratio(solvents: readonly (readonly [Solvent, Interval | undefined])[]): Interval | undefined {
  let sum = exactly(0);
  for (const [solvent, mgPerM3] of solvents) {
    const limit = countedLimit(solvent);
    if (!mgPerM3 || !limit) return undefined;
    sum = plus(sum, scale(mgPerM3, 1 / limit.limit.mg));
  }
  return sum;
}

function needed(dilute: Interval, { room, hours }: Conditions) {
  if (!room)
    return {
      neededFreshAir: all(
        neededFreshAir(dilute.low, hours.high, MIXING.low),
        neededFreshAir(dilute.likely, hours.likely, MIXING.likely),
        neededFreshAir(dilute.high, hours.low, MIXING.high),
      ),
    };
  return {
    neededAirChanges: all(
      neededAirChanges(dilute.low / room.high, hours.high, MIXING.low),
      neededAirChanges(dilute.likely / room.likely, hours.likely, MIXING.likely),
      neededAirChanges(dilute.high / room.low, hours.low, MIXING.high),
    ),
  };
}

/** The worst sitting of a plan; undefined where nothing that evaporates is a hazard, and for records and palettes. */
export function air(study: Studied): Air | undefined {
  const { plan } = study;
  if (plan.kind !== 'plan') return undefined;
  const support = supportArea(plan);
  const worst = worstSitting(study, support);
  if (!worst) return undefined;

  const c = conditions(plan.studio);
  const solvents = [...worst.grams].map(([solvent, grams]) => solventRow(solvent, grams, c));
  const standIns = [...worst.grams.keys()].flatMap((solvent) => {
    const limit = countedLimit(solvent);
    return limit?.standIn
      ? [
          {
            field: solvent.id,
            value: `${Math.round(limit.limit.mg)} mg/m³`,
            why: 'no published limit was found: counted in the mixture as turpentine would be',
          },
        ]
      : [];
  });
  return {
    solvents,
    mixtureRatio: ratio([...worst.grams.keys()].map((s, i) => [s, solvents[i]!.mgPerM3] as const)),
    layer: worst.layer,
    roomKnown: c.room !== undefined,
    ...needed(worst.dilute, c),
    parts: worst.parts.map(({ from, solvent, grams }) => ({ from, solvent: solvent.id, grams })),
    assumptions: [...emissionAssumptions(worst.parts, support !== undefined), ...c.assumptions, ...standIns],
  };
}
