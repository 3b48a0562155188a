/** Plan → Study. Composition and drying at once, everything else when it is asked for, each once. */
import { SHARED } from '../drying/settings.ts';
import { binder, dataVersion } from '../materials/catalogue.ts';
import type { Interval } from '../materials/interval.ts';
import type { Binder } from '../materials/types.ts';
import type { Placeless } from '../memory/key.ts';
import { createMemo, type Memo } from '../memory/memo.ts';
import { permanence } from '../permanence/permanence.ts';
import type { Layer, Plan } from '../plan/plan.ts';
import { wordingOf } from '../plan/surroundings.ts';
import type { AreaStudy, Assumption, LayerStudy, Study } from '../results/study.ts';
import { air } from '../studio/air.ts';
import { cautions } from '../studio/cautions.ts';
import { quantities } from '../studio/quantities.ts';
import { calendarOf } from './calendar.ts';
import { type Colouring, type ColourMemo, colouring, createColourMemo, forkColourMemo } from './colours.ts';
import { BELIEVED, believed, LIGHT_HOURS, LUX, SESSION_HOURS, TEMPERATURE } from './defaults.ts';
import { type Dried, dried, withObservations } from './drying.ts';
import { type FilmPlan, filmOf, filmOfLayer, filmPlan, type LayerFilm } from './film.ts';
import { notKnown } from './not-known.ts';
import { sourcesOf } from './sources.ts';
import { stacksOf } from './stacks.ts';

interface Layered {
  readonly film: LayerFilm;
  readonly dried: Dried;
}

interface LayerPlan {
  readonly film: FilmPlan;
  readonly resin?: Binder;
  readonly temperature: Interval;
}

function layered({ film: plan, resin, temperature }: Placeless<LayerPlan>): Layered {
  const film = filmOf(plan);
  // A record tells of films that dried long ago.
  if (plan.in === 'record') return { film, dried: { assumptions: [] } };
  return { film, dried: dried({ material: plan.material, resin, film, temperature }) };
}

export interface StudyMemo {
  readonly layers: Memo<Layered>;
  readonly colours: ColourMemo;
}

/** A memory for the studies of one text as it changes. */
export const createStudyMemo = (): StudyMemo => ({ layers: createMemo(), colours: createColourMemo() });

/** A memory of its own that knows what another knows now. */
export const forkStudyMemo = ({ layers, colours }: StudyMemo): StudyMemo => ({
  layers: layers.fork(),
  colours: forkColourMemo(colours),
});

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
};

/** A layer with the thickness that its effect asks for; as it is where none can be found. */
function withFilm(layer: Layer, kind: Plan['kind'], colours: Colouring): Layer {
  const { film } = layer;
  if (!film?.effect) return layer;
  // what stays of an oiling out has no colour, and is added to the film that is found
  const solved = colours.solve(layer, filmOfLayer({ ...layer, prepare: [] }, kind), film.effect);
  if (!solved) return layer;
  const { coat, area, beneath, lightness, reached } = solved;
  const found = { area, beneath, lightness, reached };
  return { ...layer, film: { ...film, value: coat, effect: { ...film.effect, found } } };
}

/** Everything computed from a plan. Never throws, whatever the plan lacks. */
export function study(stated: Plan, memo: StudyMemo = createStudyMemo()): Study {
  memo.layers.turn();
  // A film that is stated by its effect is put in when what lies beneath it is known.
  const solving = stated.layers.some((l) => l.film?.effect);
  const asSolved = solving ? [...stated.layers] : stated.layers;
  const plan: Plan = solving ? { ...stated, layers: asSolved } : stated;
  const warmth = plan.studio.temperature;
  const temperature = warmth ? believed(warmth.value, BELIEVED.temperature) : TEMPERATURE;

  const stacks = stacksOf(plan);
  const films: LayerFilm[] = [];
  const colours = once(() => colouring(plan, films, stacks, memo.colours));
  const made = stated.layers.map((of) => {
    const layer = of.film?.effect ? withFilm(of, plan.kind, colours()) : of;
    if (layer !== of) (asSolved as Layer[])[of.index] = layer;
    // a film that was solved for rests on more than the layer's words, and has none of its own
    const computed = memo.layers.of<LayerPlan>(
      wordingOf(layer),
      () => ({ film: filmPlan(layer, plan.kind), resin: layer.resin?.is, temperature }),
      layered,
    );
    films.push(computed.film);
    return { layer, ...computed };
  });
  const drying = withObservations(made);

  const layers: LayerStudy[] = made.map(({ layer, film }, index) => {
    const here = drying[index]!;
    return {
      layer,
      areas: layer.areas,
      coats: film.coats,
      composition: film.composition,
      drying: here.drying,
      notKnown: plan.kind === 'plan' ? notKnown(layer, film.composition, here.drying) : undefined,
      dryFilm: film.dryFilm,
      assumptions:
        here.assumptions.length > 0 ? [...film.assumptions, ...here.assumptions] : film.assumptions,
      get below() {
        return stacks.below(index);
      },
      colours: once(() => colours().layer(index)),
    };
  });
  const shares = plan.areas.map((area) => area.share?.value.likely);
  const areas: AreaStudy[] = plan.areas.map((area, i) => ({
    name: area.name,
    share: shareOf(shares, i),
    buildUp: once(() => colours().buildUp(area.name)),
    target: once(() => colours().target(area.name)),
  }));

  const base = { plan, layers, areas };
  const lazy = {
    calendar: once(() => calendarOf(plan, layers, stacks)),
    quantities: once(() => quantities(base)),
    air: once(() => air(base)),
    permanence: once(() => permanence(base)),
    cautions: once(() => cautions(base)),
  };
  const result: Study = {
    ...base,
    get assumptions() {
      return assumptions();
    },
    dataVersion,
    beneath: (area, index) => colours().beneath(area, index),
    calibration: (own) => colours().calibration(own),
    get calendar() {
      return lazy.calendar();
    },
    get quantities() {
      return lazy.quantities();
    },
    get air() {
      return lazy.air();
    },
    get permanence() {
      return lazy.permanence();
    },
    get cautions() {
      return lazy.cautions();
    },
    get sources() {
      return sources();
    },
  };
  const assumptions = once(() => studyAssumptions(result));
  const sources = once(() => sourcesOf(result, binder));
  return result;
}

/** An area without a share has an equal part of what the others leave. */
function shareOf(shares: readonly (number | undefined)[], i: number): number {
  const own = shares[i];
  if (own !== undefined && Number.isFinite(own)) return Math.max(0, own);
  const given = shares.reduce<number>((sum, s) => sum + (s ?? 0), 0);
  const silent = shares.filter((s) => s === undefined).length;
  return Math.max(0, 1 - given) / Math.max(1, silent);
}

/** What is taken for granted where the text is silent, as far as a figure of this study rests on it. */
function studyAssumptions({ plan, layers, permanence, air }: Study): Assumption[] {
  const { studio } = plan;
  const dries = layers.some((l) => l.drying);
  const assumptions: Assumption[] = [];
  if (plan.kind === 'plan') {
    if (!studio.temperature && dries)
      assumptions.push({ field: 'temperature', value: '20 °C', why: 'the plan states none' });
    if (dries)
      assumptions.push({
        field: 'days',
        value: `${SHARED.held} in 100 lie between not before and safe from`,
        why: 'of what is unknown of two coats half is the same where paint and medium are, a quarter where only the room is',
        source: SHARED.source,
      });
    if (!studio.session && (dries || air))
      assumptions.push({ field: 'session', value: `${SESSION_HOURS} hours`, why: 'the plan states none' });
    if (studio.humidity && dries)
      assumptions.push({
        field: 'humidity',
        value: 'not reckoned with',
        why: 'it changes drying, but no source was found that says by how much without knowing the driers in the oil',
        source: {
          text: 'Gardner, Paint Technology and Tests (1911): manganese-rich varnishes dry quicker in dry air, poor ones in damp',
          mark: 'published',
        },
      });
  }
  if (!studio.light && permanence.some((p) => p.years))
    assumptions.push({
      field: 'light',
      value: `${LUX} lux, ${LIGHT_HOURS} hours a year`,
      why: 'the plan states none',
    });
  if (!studio.lightSource && layers.some((l) => l.colours().length > 0))
    assumptions.push({ field: 'light-source', value: 'D65', why: 'the plan states none' });
  const silent = plan.implicitArea ? [] : plan.areas.filter((a) => !a.share);
  if (silent.length > 0 && silent.length < 50)
    assumptions.push({
      field: 'share',
      value: silent.map((a) => a.name).join(', '),
      why: 'areas without a share have equal parts of what the others leave',
    });
  return assumptions;
}
