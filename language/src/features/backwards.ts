/**
 * From the colour an area is to have back to layers of the plan: which grey (or colour) beneath, which glaze over it, how
 * much medium and how many coats. Every way shown has been put into the text, read and judged again: it adds no warning
 * and no error, and its figures are those the plan would then show.
 */
import type { Lab } from '../optics/cie.ts';
import { deltaE00 } from '../optics/difference.ts';
import { matchLayers, type OpenLayer, type Way } from '../optics/match-layers.ts';
import { type BareFilm, WIPED_OUT_KEEPS } from '../optics/stack.ts';
import type { Ingredient, Layer, Plan } from '../plan/plan.ts';
import type { ColourOn, Study } from '../results/study.ts';
import { findings } from '../rules/check.ts';
import { applied, asRead, createReread, worsened } from '../rules/gate.ts';
import { freeName } from '../rules/shared/fixes.ts';
import { pigmentsOf } from '../rules/shared/pigments.ts';
import { layOfLayer, wiped } from '../rules/shared/seen.ts';
import { compositionOf } from '../study/what-if.ts';
import { candidates } from './propose.ts';
import { matchPaint } from './single.ts';

/** What is wanted, where, and which layers of the plan may change. */
export interface Backwards {
  readonly area: string;
  /** CIELAB D65/2° */
  readonly target: Lab;
  /** ΔE00 that counts as reached */
  readonly within: number;
  /** from below upwards, all on the area */
  readonly layers: readonly Layer[];
  /** coats of a glaze at most; 4 unless said */
  readonly coats?: number;
  /** the day, as the calendar counts, by which the last of them has likely been laid */
  readonly by?: number;
  readonly stop?: () => boolean;
}

/** How the layers are made in one way, and what comes of it; the figures are of the plan read again. */
export interface Found {
  readonly kind: 'grey beneath' | 'colour beneath' | 'two glazes' | 'glazes alone';
  readonly layers: readonly {
    readonly layer: string;
    readonly kind: Layer['kind'];
    readonly parts: readonly { readonly paint: string; readonly parts: number }[];
    readonly medium?: string;
    /** of the applied volume, 0 to 1 */
    readonly share: number;
    readonly coats: number;
  }[];
  /** from the bare support upwards, the area's colours */
  readonly strip: readonly { readonly layer: string; readonly colour: ColourOn }[];
  readonly colour: ColourOn;
  readonly deltaE00: number;
  readonly reached: boolean;
  /** share of the light that comes back from beneath the glazes, 0 to 1 */
  readonly glow: number;
  /** ΔE00 by which films 30 % thinner or thicker move it */
  readonly slip: number;
  /** the day the last of the layers is likely laid, as the calendar counts */
  readonly day?: number;
  /** colours of other areas that move more than can be seen: ΔE00 */
  readonly moves: readonly { readonly area: string; readonly deltaE00: number }[];
  /** the whole text with this way in it */
  readonly text: string;
}

/** Why nothing can be sought. */
export interface Hindered {
  readonly hindered: string;
}

const BODY: readonly Layer['kind'][] = ['underlayer', 'layer'];
const CLEAR: readonly Layer['kind'][] = ['glaze', 'scumble', 'imprimatura'];
const MOST_COATS = 4;
/** Paints in a glaze are mixed in pairs; of more than these only the strongest in hue are. */
const MOST_PAIRED = 12;
/** ΔE00 from which a change can be seen side by side. */
const SEEN = 1;
/** Steps of the share of medium. */
const STEP = 0.05;
const SHARES = Array.from({ length: 12 }, (_, i) => Math.round((0.25 + i * STEP) * 100) / 100);

const codes = (i: Ingredient, test: (code: string) => boolean): boolean => {
  const pigments = pigmentsOf(i);
  return pigments.length > 0 && pigments.every((p) => p.code !== undefined && test(p.code));
};
const isWhite = (i: Ingredient) =>
  codes(i, (c) => c.startsWith('PW')) && pigmentsOf(i).every((p) => p.transparency.value.includes('opaque'));
const isBlack = (i: Ingredient) => codes(i, (c) => c.startsWith('PBk'));
const isClear = (i: Ingredient) =>
  pigmentsOf(i).every(
    ({ transparency: { value } }) => value === 'transparent' || value === 'semi-transparent',
  );

/** Every paint alone and, of the first `most`, in pairs. */
const alonePaired = (count: number, most: number): number[][] =>
  Array.from({ length: count }, (_, i) => [
    [i],
    ...Array.from({ length: Math.max(0, Math.min(most, count) - i - 1) }, (__, k) => [i, i + 1 + k]),
  ]).flat();

/** The areas on which all of some layers lie, in the plan's order. */
export const layersThrough = (plan: Plan, layers: readonly Layer[]): string[] =>
  plan.areas.map((a) => a.name).filter((name) => layers.every((l) => l.areas.includes(name)));

interface Opened {
  readonly layer: Layer;
  readonly open: OpenLayer;
}

/** The rewritten layer: its own text with other parts, share and coats. */
function rewritten(
  text: string,
  layer: Layer,
  made: Way['layers'][number],
  name = layer.name,
): string | undefined {
  const base = layer.place.start;
  const edits: { start: number; end: number; text: string }[] = [
    { start: layer.namePlace.start, end: layer.namePlace.end, text: name },
  ];
  const added: string[] = [];
  const put = (field: string, words: string | undefined) => {
    const use = layer.fields.find((f) => f.name === field);
    if (use && words !== undefined) edits.push({ start: use.place.start, end: use.place.end, text: words });
    else if (words !== undefined) added.push(words);
  };
  put('colour', `colour ${partsText(made.parts)}`);
  const medium = layer.medium?.of?.name;
  if (medium !== undefined && made.share !== layer.medium?.share?.value.likely)
    put('medium', `medium ${Math.round(made.share * 100)} % ${medium}`);
  const coats = layer.coats?.value.likely ?? 1;
  if (made.coats !== coats) put('coats', `coats ${made.coats}`);
  const at = layer.insertField;
  if (added.length > 0) {
    if (!at) return undefined;
    edits.push({
      start: at.place.start,
      end: at.place.end,
      text: added.map((f) => at.before + f).join('') + at.after,
    });
  }
  edits.sort((a, b) => a.start - b.start);
  let out = '';
  let from = base;
  for (const e of edits) {
    if (e.start < from) return undefined;
    out += text.slice(from, e.start) + e.text;
    from = e.end;
  }
  return out + text.slice(from, layer.place.end);
}

const partsText = (parts: Way['layers'][number]['parts']): string =>
  parts.length === 1 ? parts[0]!.paint : parts.map((p) => `${p.parts} ${p.paint}`).join(' + ');

/** Ways to give an area its colour through the layers named, different ones, the best first; or why none can be sought. */
export function backwards(study: Study, wanted: Backwards): readonly Found[] | Hindered {
  const { plan } = study;
  const { text } = plan;
  const layers = wanted.layers.toSorted((a, b) => a.index - b.index);
  const first = layers[0];
  if (!first || text === undefined) return { hindered: 'No layer is named.' };
  for (const layer of layers) {
    const why = unfit(plan, study, layer, wanted.area);
    if (why) return { hindered: why };
  }
  const below = study.beneath(wanted.area, first.index);
  const face = study.beneath(wanted.area, plan.layers.length)?.face;
  if (!below || !face)
    return { hindered: `Nothing can be predicted beneath ‘${first.name}’ on ${wanted.area}.` };
  const above: (Layer | BareFilm)[] = [];
  for (const layer of plan.layers.slice(first.index)) {
    if (!layer.areas.includes(wanted.area)) continue;
    if (layers.includes(layer)) above.push(layer);
    else {
      const lay = layOfLayer(study, layer);
      if (lay.kind === 'film')
        above.push({
          pigments: lay.pigments,
          thickness: lay.thickness,
          keep: wiped(layer, wanted.area) ? WIPED_OUT_KEEPS : 1,
        });
      else if (lay.kind !== 'clear')
        return { hindered: `‘${layer.name}’ lies over them on ${wanted.area} and lets nothing through.` };
    }
  }

  const trial = trying(study, wanted, text);
  const found: Found[] = [];
  const seek = (kind: Found['kind'], opened: readonly Opened[], doubled?: Layer): void => {
    if (opened.some((o) => o.open.sets.length === 0) || wanted.stop?.()) return;
    const indexOf = (layer: Layer) => opened.findIndex((o) => o.layer === layer);
    const ways = matchLayers({
      open: opened.map((o) => o.open),
      areas: [
        {
          target: wanted.target,
          below: below.stack,
          face,
          layers: above.flatMap((l): (number | BareFilm)[] => {
            if (!('name' in l)) return [l];
            return l === doubled ? [indexOf(l), indexOf(l) + 1] : [indexOf(l)];
          }),
        },
      ],
      light: plan.studio.lightSource?.value,
      ways: 24,
      stop: wanted.stop,
    });
    let kept = 0;
    const glazes = new Set<string>();
    for (const way of ranked(ways, wanted.within)) {
      // another way is one with other colours in its glazes
      const key = opened
        .flatMap(({ layer }, i) =>
          CLEAR.includes(layer.kind)
            ? [
                way.layers[i]!.parts.map((p) => p.paint)
                  .sort()
                  .join('+'),
              ]
            : [],
        )
        .join(' ');
      if (glazes.has(key)) continue;
      const tried = trial(kind, opened, way);
      if (!tried) continue;
      glazes.add(key);
      found.push(tried);
      if (++kept >= 2) break;
    }
  };

  const opened = layers.map((layer) => opening(study, plan, layer, 'grey', wanted));
  const bodies = layers.some((l) => BODY.includes(l.kind));
  seek(bodies ? 'grey beneath' : 'glazes alone', opened);
  if (bodies) {
    seek(
      'colour beneath',
      layers.map((layer) => opening(study, plan, layer, 'coloured', wanted)),
    );
    const glazes = layers.filter((l) => CLEAR.includes(l.kind));
    const [glaze] = glazes;
    if (glazes.length === 1 && glaze && glaze.kind === 'glaze')
      seek(
        'two glazes',
        opened.flatMap((o) => {
          if (o.layer !== glaze) return [o];
          const single = { ...o, open: { ...o.open, sets: o.open.sets.filter((s) => s.length === 1) } };
          return [single, single];
        }),
        glaze,
      );
  }
  return different(found);
}

/** The best of every kind first, then the seconds; three in all, none that misses while others reach. */
function different(found: readonly Found[]): Found[] {
  const order = (a: Found, b: Found) =>
    Number(b.reached) - Number(a.reached) || (a.reached ? b.glow - a.glow : a.deltaE00 - b.deltaE00);
  const firsts = [...new Map(found.toReversed().map((f) => [f.kind, f])).values()].sort(order);
  const rest = found.filter((f) => !firsts.includes(f)).sort(order);
  const all = [...firsts, ...rest];
  const reached = all.filter((f) => f.reached);
  return (reached.length > 0 ? reached : all.sort((a, b) => a.deltaE00 - b.deltaE00)).slice(0, 3);
}

/** Those that reach the colour come first, fewest paints, then most glow (by tenths), then steadiest; others by distance. */
function ranked(ways: readonly Way[], within: number): Way[] {
  const paints = (w: Way) => w.layers.reduce((n, l) => n + l.parts.length, 0);
  const off = (w: Way) => w.areas[0]!.deltaE00;
  const glow = (w: Way) => Math.round(w.areas[0]!.glow * 10);
  return ways.toSorted((a, b) => {
    const [in1, in2] = [off(a) <= within, off(b) <= within];
    if (in1 !== in2) return in1 ? -1 : 1;
    if (!in1) return off(a) - off(b);
    return paints(a) - paints(b) || glow(b) - glow(a) || a.slip - b.slip;
  });
}

function unfit(plan: Plan, study: Study, layer: Layer, area: string): string | undefined {
  const name = `‘${layer.name}’`;
  if (!layer.areas.includes(area))
    return `${name} does not lie on ${area}. It lies on ${layer.areas.join(', ')}.`;
  if (!BODY.includes(layer.kind) && !CLEAR.includes(layer.kind))
    return `${name} is a ${layer.kind}; only paint can be sought: an underlayer, layer, glaze, scumble or imprimatura.`;
  if (!layer.colour || layer.place.uri !== plan.uri || layer.colour.kind !== 'formula')
    return `${name} has no paints to begin from; give it a colour, for instance ‘colour PW6’.`;
  if (layer.film?.effect)
    return `${name} states its film by the lightness it is to bring, so its film cannot be sought too.`;
  if (!study.layers[layer.index]?.composition) return `Nothing can be computed of ${name}.`;
  return undefined;
}

function opening(
  study: Study,
  plan: Plan,
  layer: Layer,
  beneath: 'grey' | 'coloured',
  wanted: Backwards,
): Opened {
  const own = new Set(
    layer.colour?.kind === 'formula' ? layer.colour.formula.parts.map((p) => p.ingredient.name) : [],
  );
  const body = BODY.includes(layer.kind);
  const fits = ([name, i]: readonly [string, Ingredient]) =>
    body
      ? beneath === 'grey'
        ? isWhite(i) || isBlack(i)
        : isWhite(i) || !isBlack(i)
      : (isClear(i) && (!isBlack(i) || own.has(name))) ||
        (layer.kind === 'scumble' && (isWhite(i) || own.has(name)));
  const chosen = [...candidates(plan)].filter(fits);
  const paints = chosen.flatMap(([name, i]) => matchPaint(study, name, i, layer));
  const named = new Map(chosen);
  const index = (test: (i: Ingredient) => boolean) =>
    paints.flatMap((p, i) => (test(named.get(p.name)!) ? [i] : []));
  const whites = index(isWhite);
  const composition = compositionOf(layer);
  const share = layer.medium?.of ? (composition?.mediumShare.likely ?? 0) : 0;
  const coats = layer.coats?.value.likely ?? 1;
  return {
    layer,
    open: {
      paints,
      sets: body
        ? beneath === 'grey'
          ? [...whites.map((w) => [w]), ...whites.flatMap((w) => index(isBlack).map((b) => [w, b]))]
          : whites.slice(0, 1).flatMap((w) => index((i) => !isWhite(i)).map((c) => [w, c]))
        : alonePaired(paints.length, MOST_PAIRED),
      film: composition?.dryFilm.likely ?? 5,
      coats: body ? coats : Math.max(coats, wanted.coats ?? MOST_COATS),
      shares: body || share === 0 ? [share] : SHARES,
      solids: composition?.mediumSolids,
    },
  };
}

/** Puts a way into the text and reads it again; undefined where the plan would be the worse for it, or too late. */
function trying(study: Study, wanted: Backwards, text: string) {
  const { plan } = study;
  const host = asRead(plan);
  const reread = createReread(plan.uri);
  const judge = (p: Plan, s: Study) => ({ plan: p, found: findings(p, s) });
  const worse = worsened(judge(plan, study));
  return (kind: Found['kind'], opened: readonly Opened[], way: Way): Found | undefined => {
    const written = new Map<Layer, string[]>();
    const names: string[] = [];
    for (const [i, { layer }] of opened.entries()) {
      const again = written.get(layer);
      const name = again ? freeName(plan, `${layer.name}-over`) : layer.name;
      const block = rewritten(text, layer, way.layers[i]!, name);
      if (block === undefined) return undefined;
      names.push(name);
      written.set(layer, [...(again ?? []), block]);
    }
    const eol = text.includes('\r\n') ? '\r\n' : '\n';
    const changed = applied(text, plan.uri, {
      title: '',
      edits: [...written].map(([layer, blocks]) => ({ place: layer.place, text: blocks.join(eol) })),
    });
    if (changed === undefined) return undefined;
    const after = reread(changed, host);
    if (worse(judge(after.plan, after.study))) return undefined;
    const area = after.study.areas.find((a) => a.name === wanted.area);
    const strip = area?.buildUp() ?? [];
    const colour = strip.at(-1)?.colour;
    if (!colour) return undefined;
    const last = after.study.calendar.entries.findLast((e) => names.includes(e.layer));
    const day = last?.painted ?? last?.likely;
    if (wanted.by !== undefined && (day === undefined || day > wanted.by)) return undefined;
    const off = deltaE00(wanted.target, colour.lab);
    return {
      kind,
      layers: opened.map(({ layer }, i) => ({
        layer: names[i]!,
        kind: layer.kind,
        parts: way.layers[i]!.parts,
        ...(layer.medium?.of ? { medium: layer.medium.of.name } : {}),
        share: way.layers[i]!.share,
        coats: way.layers[i]!.coats,
      })),
      strip: strip.map(({ layer, colour: c }) => ({ layer, colour: c })),
      colour,
      deltaE00: off,
      reached: off <= wanted.within,
      glow: way.areas[0]!.glow,
      slip: way.slip,
      day,
      moves: moved(study, after.study, wanted.area),
      text: changed,
    };
  };
}

/** Other areas whose colour in the end changes with the layers. */
function moved(before: Study, after: Study, area: string): Found['moves'] {
  const then = new Map(after.areas.map((a) => [a.name, a.buildUp().at(-1)?.colour]));
  return before.areas.flatMap((a) => {
    const [from, to] = [a.buildUp().at(-1)?.colour, then.get(a.name)];
    const off = from && to ? deltaE00(from.lab, to.lab) : 0;
    return a.name !== area && off >= SEEN ? [{ area: a.name, deltaE00: off }] : [];
  });
}
