/** The room as the estimate takes it, and everything it takes for granted, said. */
import { exactly, type Interval } from '../materials/interval.ts';
import type { Measure, Studio } from '../plan/plan.ts';
import type { Assumption } from '../results/study.ts';
import type { Emission } from './emissions.ts';
import { BRUSHES, CLOSED_ROOM, MIXING, PREPARATION_SOURCE, SESSION_HOURS } from './settings.ts';

export interface Conditions {
  /** hours, above 0 */
  readonly hours: Interval;
  /** m³, above 0; absent where the plan names none */
  readonly room?: Interval;
  /** per hour */
  readonly airChanges: Interval;
  readonly assumptions: readonly Assumption[];
}

const positive = (m: Measure | undefined): Interval | undefined =>
  m && m.value.low > 0 && Number.isFinite(m.value.high) ? m.value : undefined;

export function conditions(studio: Studio): Conditions {
  const assumptions: Assumption[] = [];
  const session = positive(studio.session);
  if (!session)
    assumptions.push({
      field: 'session',
      value: `${SESSION_HOURS} hours`,
      why: studio.session ? 'a session lasts longer than 0 hours' : 'the plan names no session',
    });
  const room = positive(studio.room);
  if (studio.room && !room)
    assumptions.push({
      field: 'room',
      value: 'unknown',
      why: `a room of ${studio.room.words} holds no air to tell a share of`,
    });
  const stated = studio.airChanges?.value;
  const usable = stated && stated.low >= 0 && Number.isFinite(stated.high) ? stated : undefined;
  if (room && !usable)
    assumptions.push({
      field: 'air-changes',
      value: `${CLOSED_ROOM.low} to ${CLOSED_ROOM.high} per hour`,
      why: 'the plan does not tell how the room is aired: windows shut',
      source: CLOSED_ROOM.source,
    });
  assumptions.push({
    field: 'mixing',
    value: '1 to 3',
    why: 'air moves unevenly: the air changed does its full work, or a third of it',
    source: MIXING.source,
  });
  return { hours: session ?? exactly(SESSION_HOURS), room, airChanges: usable ?? CLOSED_ROOM, assumptions };
}

/** What the amounts of one sitting take for granted. */
export function emissionAssumptions(
  parts: readonly Emission[],
  supportKnown: boolean,
): readonly Assumption[] {
  const from = new Set(parts.map((p) => p.from));
  const assumptions: Assumption[] = [];
  if (!supportKnown)
    assumptions.push({
      field: 'support',
      value: 'no size',
      why: 'without the size of the support only the brush jar can be counted',
    });
  if (from.has('brushes'))
    assumptions.push({
      field: 'brushes',
      value: `${BRUSHES.low} to ${BRUSHES.high} ml`,
      why: 'brushes cleaned in the plan’s thinner, all of which evaporates',
      source: BRUSHES.source,
    });
  if (from.has('preparation'))
    assumptions.push({
      field: 'prepare',
      value: 'ml for every m²',
      why: PREPARATION_SOURCE.text,
      source: PREPARATION_SOURCE,
    });
  return assumptions;
}
