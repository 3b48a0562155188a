/** The plan as a diary of sittings: one coat of one layer each, with what to do, to mix and to mind. Plain data. */
import { type Interval, scale } from '../materials/interval.ts';
import type { Layer, PrepareMethod } from '../plan/plan.ts';
import type { CalendarEntry, LayerStudy, NotKnown, Study } from '../results/study.ts';
import { groundVolume } from './grounds.ts';
import { aboutWords, type Mixture, mixtures, mixWords } from './parts.ts';
import { sittings } from './sittings.ts';
import { supportArea } from './surface.ts';
import { varnishVolume } from './varnish.ts';
import { rangeWords, timeWords } from './words.ts';

export interface DiaryEntry {
  readonly layer: string;
  readonly index: number;
  readonly coat: number;
  readonly coats: number;
  /** number of the sitting it belongs to: what is painted on one day stands together */
  readonly sitting: number;
  /** day numbers, as in the study's calendar; absent where `notKnown` says why */
  readonly notBefore?: number;
  readonly likely?: number;
  readonly safeFrom?: number;
  readonly notKnown?: NotKnown;
  readonly painted?: number;
  /** ml to mix for this sitting, waste included: paints, then the medium */
  readonly amounts: readonly { readonly name: string; readonly ml: Interval }[];
  /** days in which the colour can be moved and wiped */
  readonly open?: Interval;
  /** sentences, in the order in which they are done */
  readonly steps: readonly string[];
  /** titles of the cautions that hold for this layer */
  readonly cautions: readonly string[];
}

const PREPARING: Readonly<Record<PrepareMethod, (agent: string | undefined) => string>> = {
  wipe: (a) =>
    a ? `Wipe the dry surface with ${a} on a rag and let it evaporate.` : 'Wipe the dry surface clean.',
  wash: (a) => `Wash the surface with ${a ?? 'water'} and let it dry.`,
  abrade: (a) => `Dull the surface lightly${a ? ` with ${a}` : ''} and take up the dust with a damp rag.`,
  'oil-out': (a) => `Rub a breath of ${a ?? 'oil'} over the surface and wipe off what does not stay.`,
};

const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

function laying(layer: Layer, film: Interval | undefined, coat: number, coats: number): string {
  const where = layer.everywhere ? 'over everything' : `on ${listed(layer.areas)}`;
  const which = coats > 1 ? `, coat ${coat} of ${coats},` : '';
  const thick = film ? ` It dries to ${rangeWords(film, 'µm')}.` : '';
  return `Lay ${layer.kind} ‘${layer.name}’${which} ${where}.${thick}`;
}

/** What is done to the surface before a layer, in sentences. */
export const preparing = (layer: Layer): readonly string[] =>
  layer.prepare.flatMap(({ method, agent }) => (method ? [PREPARING[method](agent?.name)] : []));

function steps(study: LayerStudy, coat: number, mixing: readonly string[]): readonly string[] {
  const { layer, coats, drying, composition } = study;
  const steps = [...preparing(layer), ...mixing];
  steps.push(laying(layer, composition?.dryFilm, coat, coats));
  const wiped = listed([...new Set(layer.wipeOut.flatMap((w) => w.areas))]);
  if (drying && composition) {
    const open = timeWords(drying.open);
    steps.push(
      wiped ? `Lift the colour out of ${wiped} while it is open: ${open}.` : `It stays open for ${open}.`,
    );
  } else if (wiped) steps.push(`Lift the colour out of ${wiped} while it is open.`);
  for (const note of layer.notes) steps.push(note);
  return steps;
}

/** One coat of a ground, a size or a varnish. */
function unmixed(study: Study, layer: LayerStudy, support: Interval): DiaryEntry['amounts'] {
  const ground = groundVolume(study, layer, support);
  const varnish = varnishVolume(study, layer, support);
  return [
    ...(ground ? [{ name: ground.name, ml: scale(ground.ml, 1 / Math.max(1, layer.coats)) }] : []),
    ...(varnish ? [{ name: varnish.sold ? varnish.name : `${varnish.name} varnish`, ml: varnish.ml }] : []),
  ];
}

/** By layer: the day by which it was laid, since it or something on it is dated. */
function latestDays({ layers }: Study): readonly number[] {
  const byArea = new Map<string, number>();
  const days: number[] = [];
  for (const { layer, areas } of layers.toReversed()) {
    const above = areas.map((a) => byArea.get(a) ?? Number.POSITIVE_INFINITY);
    const day = Math.min(layer.painted?.number ?? Number.POSITIVE_INFINITY, ...above);
    for (const a of areas) byArea.set(a, day);
    days.push(day);
  }
  return days.reverse();
}

/** The sittings in the order in which they were or likely will be held. Empty for records and palettes. */
export function diary(study: Study): readonly DiaryEntry[] {
  if (study.plan.kind !== 'plan') return [];
  const layers = new Map(study.layers.map((l) => [l.layer.index, l]));
  const support = supportArea(study.plan);
  // Coats of a layer are alike, and of many only some are listed: the first speaks for all.
  const sessions = new Map(
    (study.quantities?.sessions ?? []).flatMap((s) => (s.coat === 1 ? [[s.layer, s]] : [])),
  );
  const cautions = new Map<string, string[]>();
  for (const { title, where } of study.cautions)
    for (const layer of where) cautions.set(layer, [...(cautions.get(layer) ?? []), title]);

  const held = sittings(study.calendar);
  const sittingOf = new Map(held.flatMap((s) => s.entries.map((e) => [e, s] as const)));
  const mixed = new Map<number, readonly Mixture[]>();
  /** Told with the first of the sitting's coats of a layer. */
  const mixing = (entry: CalendarEntry, alone: DiaryEntry['amounts']): readonly string[] => {
    const here = sittingOf.get(entry);
    if (!here || here.entries.find((e) => e.index === entry.index) !== entry) return [];
    const all = mixed.get(here.number) ?? mixtures(study, here.entries);
    mixed.set(here.number, all);
    const own = all.find((m) => m.layers.includes(entry.layer));
    return own ? mixWords(own, entry.layer) : alone.map(({ name, ml }) => `Take ${name}, ${aboutWords(ml)}.`);
  };

  const sitting = (entry: CalendarEntry): DiaryEntry[] => {
    const layer = layers.get(entry.index);
    if (!layer) return [];
    const session = sessions.get(entry.layer);
    const amounts = session
      ? [...session.paints, ...(session.medium ? [session.medium] : [])]
      : support
        ? unmixed(study, layer, support)
        : [];
    const { index, coat, notBefore, likely, safeFrom, notKnown, painted } = entry;
    return [
      {
        layer: entry.layer,
        index,
        coat,
        coats: layer.coats,
        sitting: sittingOf.get(entry)?.number ?? 0,
        notBefore,
        likely,
        safeFrom,
        notKnown,
        painted,
        amounts,
        open: layer.drying?.open,
        steps: steps(layer, coat, mixing(entry, amounts)),
        cautions: cautions.get(entry.layer) ?? [],
      },
    ];
  };
  const latest = latestDays(study);
  const when = (e: CalendarEntry) =>
    Math.min(e.painted ?? e.likely ?? Number.POSITIVE_INFINITY, latest[e.index] ?? Number.POSITIVE_INFINITY);
  // sittings nobody can date come last, in the order of the plan
  const earlier = (a: number, b: number) => (a === b ? 0 : a - b);
  return [...study.calendar.entries]
    .sort((a, b) => earlier(when(a), when(b)) || a.index - b.index || a.coat - b.coat)
    .flatMap(sitting);
}
