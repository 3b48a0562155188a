/**
 * The air of the sitting in which most evaporates, against the published limits. Everything is taken to evaporate
 * steadily within the session; the concentration told is that at its end, the highest, which is held against limits
 * meant for the average of a working day: on the safe side. An estimate, never a measurement.
 */
import { solvent as solventNamed } from '../materials/catalogue.ts';
import { exactly, type Interval, plus, scale } from '../materials/interval.ts';
import type { Solvent, SolventLimit } from '../materials/types.ts';
import type { Measure } from '../plan/plan.ts';
import type { Air, Assumption } from '../study/study.ts';
import { type Emission, emissions, thinner } from './emissions.ts';
import { middle } from './recipe.ts';
import {
  BRUSHES,
  CLOSED_ROOM,
  LIKE_TURPENTINE,
  MIXING,
  PREPARATION_SOURCE,
  SESSION_HOURS,
} from './settings.ts';
import { type Studied, supportArea } from './surface.ts';
import {
  concentration,
  mgPerM3ToPpm,
  neededAirChanges,
  neededFreshAir,
  ppmToMgPerM3,
  saturationPpm,
} from './vapour.ts';

/** A limit in mg/m³; undefined where it is in ppm of something without a molar mass. */
function inMg(limit: SolventLimit | undefined, solvent: Solvent): number | undefined {
  if (limit?.mgPerM3 !== undefined) return limit.mgPerM3;
  if (limit?.ppm === undefined || !solvent.molarMass) return undefined;
  return ppmToMgPerM3(limit.ppm, middle(solvent.molarMass));
}

/** The limit a solvent is held against; one that no list names is treated as turpentine would be. */
function countedLimit(solvent: Solvent): { readonly mg: number; readonly standIn: boolean } | undefined {
  const own = inMg(solvent.limits[0], solvent);
  if (own !== undefined && own > 0) return { mg: own, standIn: false };
  const like = solventNamed(LIKE_TURPENTINE);
  const mg = like && inMg(like.limits[0], like);
  return mg !== undefined && mg > 0 ? { mg, standIn: true } : undefined;
}

interface Sitting {
  readonly layer: string;
  readonly parts: readonly Emission[];
  /** g by solvent */
  readonly grams: ReadonlyMap<Solvent, Interval>;
  /** m³ of air that dilute it all to the limit */
  readonly dilute: Interval;
}

function sitting(layer: string, parts: readonly Emission[]): Sitting {
  const grams = new Map<Solvent, Interval>();
  let dilute = exactly(0);
  for (const part of parts) {
    grams.set(part.solvent, plus(grams.get(part.solvent) ?? exactly(0), part.grams));
    const limit = countedLimit(part.solvent);
    if (limit) dilute = plus(dilute, scale(part.grams, 1000 / limit.mg));
  }
  return { layer, parts, grams, dilute };
}

const positive = (m: Measure | undefined): Interval | undefined =>
  m && m.value.low > 0 && Number.isFinite(m.value.high) ? m.value : undefined;

const words = (limit: SolventLimit | undefined) =>
  limit && { ppm: limit.ppm, mgPerM3: limit.mgPerM3, source: `${limit.what}, ${limit.source.text}` };

const all = (low?: number, likely?: number, high?: number): Interval | undefined =>
  low === undefined || likely === undefined || high === undefined ? undefined : { low, likely, high };

/** mg/m³ of one solvent at the end of the session, no more than its vapour can fill the air with. */
function inAir(g: Interval, solvent: Solvent, room: Interval, changes: Interval, hours: Interval) {
  const most =
    solvent.vapourPressure && solvent.molarMass
      ? ppmToMgPerM3(saturationPpm(solvent.vapourPressure.high), middle(solvent.molarMass))
      : Number.POSITIVE_INFINITY;
  const c = (grams: number, volume: number, airChanges: number, h: number, mixing: number) => {
    const found = concentration(grams * 1000, h, { volume, airChanges }, mixing);
    return found === undefined ? undefined : Math.min(found, most);
  };
  return all(
    c(g.low, room.high, changes.high, hours.high, MIXING.low),
    c(g.likely, room.likely, changes.likely, hours.likely, MIXING.likely),
    c(g.high, room.low, changes.low, hours.low, MIXING.high),
  );
}

/** The worst sitting of a plan; undefined where nothing that evaporates is a hazard, and for records. */
export function air(study: Studied): Air | undefined {
  const { plan } = study;
  if (plan.kind !== 'plan') return undefined;
  const support = supportArea(plan);
  const memo = new Map();
  let worst: Sitting | undefined;
  for (const layer of study.layers) {
    const parts = emissions(study, layer, support, memo, thinner(plan, layer.layer, memo));
    if (parts.length === 0) continue;
    const here = sitting(layer.layer.name, parts);
    if (!worst || here.dilute.likely > worst.dilute.likely) worst = here;
  }
  if (!worst) return undefined;

  const assumptions: Assumption[] = [];
  const assume = (a: Assumption) => assumptions.push(a);
  const hours = positive(plan.studio.session) ?? exactly(SESSION_HOURS);
  if (!positive(plan.studio.session))
    assume({ field: 'session', value: `${SESSION_HOURS} hours`, why: 'the plan names no session that lasts' });
  const room = positive(plan.studio.room);
  if (plan.studio.room && !room)
    assume({ field: 'room', value: 'unknown', why: `a room of ${plan.studio.room.words} holds no air` });
  const stated = plan.studio.airChanges?.value;
  const changes = stated && stated.low >= 0 && Number.isFinite(stated.high) ? stated : CLOSED_ROOM;
  if (room && changes === CLOSED_ROOM)
    assume({
      field: 'air-changes',
      value: `${CLOSED_ROOM.low} to ${CLOSED_ROOM.high} per hour`,
      why: 'the plan does not tell how the room is aired: windows shut',
      source: CLOSED_ROOM.source,
    });
  if (!support)
    assume({
      field: 'support',
      value: 'no size',
      why: 'without the size of the support only the brush jar can be counted',
    });
  if (worst.parts.some((p) => p.from === 'brushes'))
    assume({
      field: 'brushes',
      value: `${BRUSHES.low} to ${BRUSHES.high} ml`,
      why: 'brushes cleaned in the plan’s thinner, all of which evaporates',
      source: BRUSHES.source,
    });
  if (worst.parts.some((p) => p.from === 'preparation'))
    assume({
      field: 'prepare',
      value: 'ml for every m²',
      why: PREPARATION_SOURCE.text,
      source: PREPARATION_SOURCE,
    });
  assume({
    field: 'mixing',
    value: `${MIXING.low} to ${MIXING.high}`,
    why: 'air moves unevenly: the air changed does its full work, or a third of it',
    source: MIXING.source,
  });

  let ratio: Interval | undefined = room && exactly(0);
  const solvents = [...worst.grams].map(([solvent, grams]) => {
    const mgPerM3 = room && inAir(grams, solvent, room, changes, hours);
    const limit = countedLimit(solvent);
    if (limit?.standIn)
      assume({
        field: solvent.id,
        value: `${Math.round(limit.mg)} mg/m³`,
        why: 'no published limit was found: counted in the mixture as turpentine would be',
      });
    ratio = ratio && mgPerM3 && limit ? plus(ratio, scale(mgPerM3, 1 / limit.mg)) : undefined;
    const molar = solvent.molarMass;
    return {
      name: solvent.id,
      grams,
      ppm: mgPerM3 && molar && mapPpm(mgPerM3, middle(molar)),
      mgPerM3,
      limit: words(solvent.limits[0]),
      ceiling: words(solvent.ceiling),
    };
  });

  const d = worst.dilute;
  return {
    solvents,
    mixtureRatio: ratio,
    layer: worst.layer,
    roomKnown: room !== undefined,
    neededAirChanges:
      room &&
      all(
        neededAirChanges(d.low / room.high, hours.high, MIXING.low),
        neededAirChanges(d.likely / room.likely, hours.likely, MIXING.likely),
        neededAirChanges(d.high / room.low, hours.low, MIXING.high),
      ),
    neededFreshAir: room
      ? undefined
      : all(
          neededFreshAir(d.low, hours.high, MIXING.low),
          neededFreshAir(d.likely, hours.likely, MIXING.likely),
          neededFreshAir(d.high, hours.low, MIXING.high),
        ),
    parts: worst.parts.map(({ from, solvent, grams }) => ({ from, solvent: solvent.id, grams })),
    assumptions,
  };
}

const mapPpm = (mg: Interval, molarMass: number): Interval => ({
  low: mgPerM3ToPpm(mg.low, molarMass),
  likely: mgPerM3ToPpm(mg.likely, molarMass),
  high: mgPerM3ToPpm(mg.high, molarMass),
});
