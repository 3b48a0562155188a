/**
 * Sitting cards: what to do on one day, a card a sitting, as blocks. A card holds what its own sitting needs and no more:
 * what must be ready, what to prepare and to mix, how to lay it, what it will look like, what may go wrong, what comes next.
 */
import { exactly, type Interval, scale } from '../materials/interval.ts';
import { BEYOND_SRGB } from '../optics/css.ts';
import type { Layer } from '../plan/plan.ts';
import type { CautionEntry, ColourOn, LayerStudy, Study } from '../results/study.ts';
import { touching } from '../rules/shared/beneath.ts';
import { isOilFilm, isWaterBorne } from '../rules/shared/films.ts';
import { BEADS } from '../rules/shared/limits.ts';
import { mayAbrade } from '../rules/shared/prepare.ts';
import { label, listed, quoted } from '../rules/shared/words.ts';
import { TOXIC_DUST } from '../studio/cautions.ts';
import { type DiaryEntry, diary, preparing } from '../studio/diary.ts';
import {
  aboutWords,
  letDownWords,
  type Mixture,
  mediumWords,
  mixtures,
  partsWords,
} from '../studio/parts.ts';
import { type Sitting, sittings } from '../studio/sittings.ts';
import { clocksOf, dayWords, figureWords, notKnownWords, timeWords } from '../studio/words.ts';
import { SESSION_HOURS } from '../study/defaults.ts';
import { colourWith } from '../study/what-if.ts';
import { filmInWords, REMEDIES, type Remedy, TRIALS, type Trial } from './card-words.ts';
import { type Block, type Cell, list, type Part, type Report, table, words } from './document.ts';

/** What is laid of one layer in a sitting: its coats from one to another. */
interface Laid {
  readonly study: LayerStudy;
  readonly layer: Layer;
  readonly from: number;
  readonly to: number;
}

function laidIn(study: Study, { entries }: Sitting): readonly Laid[] {
  const laid = new Map<number, Laid>();
  for (const { index, coat } of entries) {
    const of = study.layers[index];
    const { from = coat } = laid.get(index) ?? {};
    if (of) laid.set(index, { study: of, layer: of.layer, from, to: coat });
  }
  return [...laid.values()];
}

const HOURS = 24;
const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** `likely Monday 2027-01-11`, `painted …`; `day 12` where the calendar has no dates. */
function sittingDay({ day, notKnown, entries }: Sitting, dated: boolean): string {
  if (day === undefined) return `day ${notKnown ? notKnownWords(notKnown) : 'not known'}`;
  const said = dayWords(day, dated);
  const named = said.startsWith('day') ? said : `${WEEKDAYS[new Date(day * 86_400_000).getUTCDay()]} ${said}`;
  if (entries.every((e) => e.painted !== undefined)) return `painted ${named}`;
  return between({ entries }, dated) ? `likely ${named}` : named;
}

/** Where the day of a sitting is not sure, between which days it lies: the last of its coats decides. */
function between({ entries }: Pick<Sitting, 'entries'>, dated: boolean): string {
  const open = entries.filter((e) => e.painted === undefined && e.likely !== undefined);
  const last = (which: 'notBefore' | 'likely' | 'safeFrom') =>
    open.reduce((most, e) => Math.max(most, e[which]!), Number.NEGATIVE_INFINITY);
  if (open.length === 0) return '';
  const clocks = clocksOf(
    { notBefore: last('notBefore'), likely: last('likely'), safeFrom: last('safeFrom') },
    dated,
  );
  return !clocks || clocks.notBefore === clocks.safeFrom
    ? ''
    : `not before ${clocks.notBefore}, safe from ${clocks.safeFrom}`;
}

const part = (id: string, title: string, ...blocks: (Block | undefined)[]): Part | undefined => {
  const said = blocks.filter((b) => b !== undefined);
  return said.length > 0 ? { id, title, blocks: said } : undefined;
};

const listIf = (items: readonly string[]): Block | undefined => (items.length > 0 ? list(items) : undefined);

/** Each line once, with the names it holds for where there are several layers. */
function byLayer(laid: readonly Laid[], lines: (of: Laid) => readonly string[]): readonly string[] {
  const names = new Map<string, string[]>();
  for (const of of laid)
    for (const line of lines(of)) names.set(line, [...(names.get(line) ?? []), of.layer.name]);
  return [...names].map(([line, of]) =>
    of.length === laid.length ? line : `${listed(of.map(quoted))}: ${line}`,
  );
}

function trialOf(upper: Laid, below: LayerStudy, today: boolean): Trial {
  const ground = below.layer.material?.is;
  if (today) return 'today';
  if (upper.layer.kind === 'varnish') return 'varnish';
  if (below.layer.kind === 'leaf') return 'leaf';
  if (ground) return ground.kind === 'oil' ? 'oil' : 'ground';
  return below.composition && isWaterBorne(below.composition) ? 'tempera' : 'oil';
}

function ready(study: Study, laid: readonly Laid[]): Part | undefined {
  const today = new Set(laid.map((l) => l.layer.index));
  const trials = new Map<Trial, Set<Layer>>();
  const tried = (trial: Trial, { layer }: LayerStudy) =>
    trials.set(trial, (trials.get(trial) ?? new Set()).add(layer));
  for (const of of laid) {
    if (of.to > of.from) tried('today', of.study);
    const beneath = of.from > 1 ? [of.study] : touching(study, of.study).map((t) => t.below);
    for (const below of beneath)
      tried(trialOf(of, below, of.study !== below && today.has(below.layer.index)), below);
  }
  const items = [...trials].map(([trial, layers]) => {
    const inOrder = [...layers].sort((a, b) => a.index - b.index);
    return `${listed(inOrder.map((l) => quoted(l.name)))}: ${TRIALS[trial].text}`;
  });
  return part(
    'ready',
    'Ready?',
    items.length > 0 ? list(items) : words('The bare support: clean, dry, free of dust.'),
  );
}

const prepare = (laid: readonly Laid[]): Part | undefined =>
  part('prepare', 'First', listIf(byLayer(laid, ({ layer }) => preparing(layer))));

/** A heap of paint with what goes into it. `several`: whether the day has other layers too. */
function heap(of: Mixture, several: boolean): string {
  const named = (layers: readonly string[]) => listed(layers.map(quoted));
  const parted = of.mediums.length > 1;
  const said = [
    partsWords(of),
    letDownWords(of)?.replace(/\.$/, ''),
    ...of.mediums.map((m) => `Medium${parted ? ` for ${named(m.layers)}` : ''}: ${mediumWords(m)}`),
  ].filter(Boolean);
  return `${several ? `${named(of.layers)}: ` : ''}${said.join('. ')}.`;
}

function mix(laid: readonly Laid[], sitting: Sitting, { study, entries }: Shared): Part | undefined {
  const heaps = mixtures(study, sitting.entries);
  // grounds and varnishes are taken as they are
  const taken = laid.flatMap(({ study: of, layer, from, to }) => {
    const amounts = of.composition ? [] : (entries.get(`${layer.index} ${from}`)?.amounts ?? []);
    const each = to > from ? ' for each coat' : '';
    return amounts.map(({ name, ml }) => `Take ${name}, ${aboutWords(ml)}${each}.`);
  });
  const ordered = heaps.some((m) => m.portions.length > 1);
  return part(
    'mix',
    'Mix',
    listIf([...heaps.map((m) => heap(m, laid.length > 1)), ...taken]),
    ordered ? words('Lay out in the order written; add the last by the knife’s tip.', true) : undefined,
  );
}

const micrometres = (film: Interval): string => `about ${figureWords(film.likely)} µm`;

function filmWords({ study, layer }: Laid): string {
  const film =
    study.composition?.dryFilm ?? (study.dryFilm && scale(study.dryFilm, 1 / Math.max(1, study.coats)));
  if (!film || layer.kind === 'leaf' || layer.kind === 'drawing') return '';
  return study.composition
    ? ` Film: ${filmInWords(film.likely)} (${micrometres(film)} dry).`
    : ` Dries to ${micrometres(film)}.`;
}

function coats({ study, from, to }: Laid): string {
  if (study.coats < 2) return '';
  return to > from ? `, coats ${from} to ${to} of ${study.coats}` : `, coat ${from} of ${study.coats}`;
}

function lay(laid: readonly Laid[]): Part | undefined {
  const items = laid.flatMap((of) => {
    const { study, layer } = of;
    const where = layer.everywhere ? 'over everything' : `on ${listed(layer.areas)}`;
    const open = study.drying && study.composition ? timeWords(study.drying.open) : undefined;
    const wiped = listed([...new Set(layer.wipeOut.flatMap((w) => w.areas))]);
    const lift = wiped ? ` Lift the colour out of ${wiped} while it is open${open ? `, ${open}` : ''}.` : '';
    const stays = !wiped && open ? ` Stays open ${open}.` : '';
    return [
      `${label(layer)}${coats(of)} ${where}.${filmWords(of)}${stays}${lift}`.replace(/^./, (c) =>
        c.toUpperCase(),
      ),
      ...layer.notes,
    ];
  });
  return part('lay', 'Lay', list(items));
}

const BEYOND = '≈';

/** A swatch with how near the truth it is, or a hatched one. */
const seen = (colour: ColourOn | undefined): Cell =>
  colour
    ? {
        text: `${colour.outOfGamut ? `${BEYOND}\u00a0` : ''}±\u00a0${colour.radius.toFixed(1)}`,
        swatch: colour.hex,
      }
    : { text: 'not known', hatched: true };

/** The colours of areas after so many coats of a layer. */
function after(
  study: Study,
  { layer, study: of }: Laid,
  coat: number,
): (area: string) => ColourOn | undefined {
  if (coat >= of.coats) return seenAfter(of);
  // a film stated by its effect is solved for all coats together
  const film = layer.film &&
    of.composition && { ...layer.film, value: of.composition.dryFilm, effect: undefined };
  const fewer = layer.coats && { ...layer.coats, value: exactly(coat) };
  return (area) => colourWith(study, { ...layer, film: film ?? layer.film, coats: fewer }, area);
}

function seenAfter(of: LayerStudy): (area: string) => ColourOn | undefined {
  const seen = new Map(of.colours().map((c) => [c.area, c]));
  return (area) => seen.get(area);
}

function colours(study: Study, laid: readonly Laid[]): Part | undefined {
  const rows = new Map<string, { before: Cell; after: Cell }>();
  const beneath = new Map<LayerStudy, ReturnType<typeof seenAfter>>();
  const below = (of: LayerStudy, area: string): Cell => {
    const next = study.layers[of.below.get(area)?.[0] ?? -1];
    if (!next) return { text: 'bare support' };
    const seenBelow = beneath.get(next) ?? seenAfter(next);
    beneath.set(next, seenBelow);
    return seen(seenBelow(area));
  };
  for (const of of laid) {
    const then = after(study, of, of.to);
    const before = of.from > 1 ? after(study, of, of.from - 1) : undefined;
    for (const area of of.study.areas)
      rows.set(area, {
        before: rows.get(area)?.before ?? (before ? seen(before(area)) : below(of.study, area)),
        after: seen(then(area)),
      });
  }
  const inOrder = study.areas.flatMap(({ name }) => {
    const row = rows.get(name);
    return row ? [[name, row.before, row.after]] : [];
  });
  const beyond = inOrder.some((row) => row.some((c) => typeof c === 'object' && c.text.startsWith(BEYOND)));
  return part(
    'colour',
    'Colour',
    table(['', 'before', 'after'], inOrder),
    words(`±: ΔE00, two in three lie within; 1 is just seen.${beyond ? ` ${BEYOND_SRGB}` : ''}`, true),
  );
}

function remedies(study: Study, laid: readonly Laid[]): Part | undefined {
  const hours = study.plan.studio.session?.value.likely ?? SESSION_HOURS;
  const found = new Set<Remedy>();
  const today = new Set(laid.map((l) => l.layer.index));
  for (const { study: upper, layer, from } of laid) {
    const beneath = from > 1 ? [upper] : touching(study, upper).map((t) => t.below);
    const dry = (l: LayerStudy) => l === upper || !today.has(l.layer.index);
    const closed = (l: LayerStudy) => dry(l) && isOilFilm(l) && l.composition.fatness.high >= BEADS.below;
    const drinks = ({ layer: below, composition: c }: LayerStudy) =>
      below.material?.is?.absorbent || (c !== undefined && (isWaterBorne(c) || c.lambda.high > 1));
    if (layer.kind === 'varnish') found.add('varnishBeads');
    else if (isOilFilm(upper)) {
      if (upper.composition.fatness.high >= BEADS.upper && beneath.some(closed))
        found.add(mayAbrade(study, upper) ? 'beads' : 'beadsOnPoison');
      if (beneath.some(drinks)) found.add('sinks');
      if (upper.drying && upper.drying.open.low * HOURS < hours) found.add('setsEarly');
    }
  }
  if (found.has('beadsOnPoison')) found.delete('beads');
  const order = Object.keys(REMEDIES) as Remedy[];
  return part('remedies', 'If', listIf(order.filter((r) => found.has(r)).map((r) => REMEDIES[r].text)));
}

/** Told beside the cautions of a sitting that has any of the others. */
const ABOUT_ALL = ['vulnerable-people', 'waste'];
const RAGS = ['rags', 'waste'];
/** These keep children, pets and the pregnant out of the room. */
const GUARDED: readonly string[] = [...TOXIC_DUST, 'any-solvent'];

/** What all cards look up, found once. */
interface Shared {
  readonly study: Study;
  /** by index of the layer and coat */
  readonly entries: ReadonlyMap<string, DiaryEntry>;
  /** by name of what they hold for */
  readonly cautions: ReadonlyMap<string, readonly CautionEntry[]>;
  readonly aboutAll: readonly CautionEntry[];
}

function sharedBy(study: Study): Shared {
  const cautions = new Map<string, CautionEntry[]>();
  const own = study.cautions.filter((c) => !ABOUT_ALL.includes(c.hazard));
  for (const c of own) for (const name of c.where) cautions.set(name, [...(cautions.get(name) ?? []), c]);
  return {
    study,
    entries: new Map(diary(study).map((e) => [`${e.index} ${e.coat}`, e])),
    cautions,
    aboutAll: study.cautions.filter((c) => ABOUT_ALL.includes(c.hazard)),
  };
}

/** Those of these layers and of the paints in them, and those that hold beside them. */
function cautionsOf(
  laid: readonly Laid[],
  sitting: Sitting,
  { study, cautions, aboutAll }: Shared,
): readonly CautionEntry[] {
  const paints = mixtures(study, sitting.entries).flatMap((m) => m.portions.map((p) => p.name));
  const names = [...laid.map((l) => l.layer.name), ...paints];
  const own = [...new Set(names.flatMap((name) => cautions.get(name) ?? []))];
  const guarded = own.some((c) => GUARDED.includes(c.hazard));
  return [...own, ...aboutAll.filter((c) => c.hazard !== 'vulnerable-people' || guarded)];
}

const cautionWords = ({ title, text }: CautionEntry): string => `${title}: ${text}`;

function next(study: Study, all: readonly Sitting[], number: number): Part | undefined {
  const then = all[number];
  if (!then) return part('next', 'Next', words('This is the last sitting.'));
  const { dated } = study.calendar;
  const what = listed(laidIn(study, then).map((l) => `${label(l.layer)}${coats(l)}`));
  const range = between(then, dated);
  const when = `${sittingDay(then, dated)}${range && ` (${range})`}`;
  return part('next', 'Next', words(`Sitting ${then.number}, ${when}: ${what}.`));
}

/** One sitting as a report of its own, and the same with its cautions by their titles alone. */
export interface Card {
  readonly whole: Report;
  readonly brief: Report;
}

function card(
  study: Study,
  all: readonly Sitting[],
  sitting: Sitting,
  shared: Shared,
  notice?: string,
): Card {
  const laid = laidIn(study, sitting);
  const { dated } = study.calendar;
  const cautions = cautionsOf(laid, sitting, shared);
  const mind = cautions.filter((c) => !RAGS.includes(c.hazard));
  const rags = cautions.filter((c) => RAGS.includes(c.hazard));
  const parts = [
    ready(study, laid),
    prepare(laid),
    mix(laid, sitting, shared),
    lay(laid),
    colours(study, laid),
    remedies(study, laid),
    part('mind', 'Mind', listIf(mind.map(cautionWords))),
    part('rags', 'Rags', listIf(rags.map(cautionWords))),
    next(study, all, sitting.number),
  ];
  const whole: Report = {
    title: `Sitting ${sitting.number} of ${all.length}: ${sittingDay(sitting, dated)}`,
    subtitle: [study.plan.title ?? 'Untitled', between(sitting, dated)].filter(Boolean).join('; '),
    notice,
    parts: parts.filter((p) => p !== undefined),
  };
  const titles = words(`${mind.map((c) => c.title).join('; ')}: see Cautions in the report.`);
  const brief = whole.parts.map((p) => (p.id === 'mind' ? { ...p, blocks: [titles] } : p));
  return { whole, brief: { ...whole, parts: brief } };
}

/** A card for each of the sittings asked for, all of them where none is. `notice` stands at the top of each. */
export function cards(study: Study, notice?: string, only?: readonly Sitting[]): readonly Card[] {
  const all = sittings(study.calendar);
  const shared = sharedBy(study);
  return (only ?? all).map((s) => card(study, all, s, shared, notice));
}
