/**
 * The section drawing: what a cross-section of the finished (or documented) painting would show, areas side by side,
 * to scale in µm, each layer in the colour the eye sees after it. Films thicker than the break are cut short, visibly.
 */

import { fatness, range } from '../features/figures.ts';
import type { Interval } from '../materials/interval.ts';
import { type Screen, screenWords } from '../optics/css.ts';
import type { Sample } from '../plan/plan.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import { type Extent, WHOLE } from './extent.ts';
import { el, largest, type Markup, picture } from './markup.ts';

/** µm above which a layer is drawn broken: a ground would else leave no room for the glazes. */
const BREAK = 60;
const BAR = 90;
/** from a bar's left edge to its labels */
const TO_LABEL = BAR + 32;
/** of a column at least, and the mean advance of a letter by its size in common sans-serif faces, on the safe side */
const COLUMN = 320;
const ADVANCE = 0.56;
const LABEL = 28;
const HEAD = 34;
const FOOT = 30;

interface Slice {
  readonly name: string;
  readonly label: string;
  readonly detail: string;
  readonly film: Interval | undefined;
  /** whether nobody measured the film, so that it is drawn as such layers usually lie */
  readonly unknown: boolean;
  readonly colour: Pick<Screen, 'hex' | 'outOfGamut'> | undefined;
}

interface Column {
  readonly title: string;
  readonly note: string;
  /** bottom to top */
  readonly slices: readonly Slice[];
}

function filmWords({ dryFilm, layer }: LayerStudy): string {
  if (!dryFilm) return 'film unknown';
  return layer.film?.given === 'unknown'
    ? `film unknown, usually ${range(dryFilm, 'µm')}`
    : range(dryFilm, 'µm');
}

function areaColumn(study: Study, area: string, extent: Extent): Column {
  const share = study.areas.find((a) => a.name === area)?.share;
  const all = study.layers.filter((l) => l.areas.includes(area));
  const shown = all.slice(-extent.layers);
  const colours = new Map(
    study.areas
      .find((a) => a.name === area)
      ?.buildUp()
      .map((b) => [b.index, b.colour]),
  );
  const slices = shown.map((l): Slice => {
    const fat = l.composition ? `, fatness ${fatness(l.composition.fatness)}` : '';
    return {
      name: l.layer.name,
      label: `${l.layer.kind} ${l.layer.name}${l.coats > 1 ? `, ${l.coats} coats` : ''}`,
      detail: `${filmWords(l)}${fat}`,
      film: l.dryFilm,
      unknown: !l.dryFilm || l.layer.film?.given === 'unknown',
      colour: colours.get(l.layer.index),
    };
  });
  const beneath = all.length - shown.length;
  return {
    title: area,
    note: [
      ...(share === undefined ? [] : [`${Math.round(share * 100)} % of the support`]),
      ...(beneath > 0 ? [`${beneath} layers beneath not drawn`] : []),
    ].join(', '),
    slices,
  };
}

function sampleColumn(study: Study, sample: Sample): Column {
  const area = sample.in?.areas[0];
  return {
    title: `sample ${sample.name}`,
    note: area ? `taken in ${area}, as measured` : 'as measured',
    slices: sample.layers.map((l): Slice => {
      const planned = l.layer.is && study.layers[l.layer.is.index];
      return {
        name: l.layer.name,
        label: l.layer.name,
        detail: l.film && l.film.given !== 'unknown' ? range(l.film.value, 'µm') : 'not measured',
        film: l.film?.value,
        unknown: !l.film || l.film.given === 'unknown',
        colour: area && planned ? planned.colours().find((c) => c.area === area) : undefined,
      };
    }),
  };
}

/** Labels are as long as painters' names are: the widest decides, or the drawing would cut them off. */
const columnWidth = (columns: readonly Column[]): number =>
  largest(
    columns.flatMap((c) => [
      COLUMN,
      c.title.length * 13 * ADVANCE,
      c.note.length * 12 * ADVANCE,
      ...c.slices.map((s) => TO_LABEL + Math.max(s.label.length * 12, s.detail.length * 11) * ADVANCE),
    ]),
  ) + 16;

const drawn = (slice: Slice): number => Math.min(slice.film?.likely ?? 10, BREAK);

/** Moves labels apart until none overlap, keeping their order and staying as near to their layers as they can. */
function spread(wanted: readonly number[], top: number, bottom: number): number[] {
  const placed = wanted.map((y) => Math.min(y, bottom));
  for (let i = 1; i < placed.length; i++)
    placed[i] = Math.min(placed[i] as number, (placed[i - 1] as number) - LABEL);
  const over = top - (placed.at(-1) ?? top);
  if (over > 0) {
    let limit = top;
    for (let i = placed.length - 1; i >= 0; i--) {
      placed[i] = Math.max(placed[i] as number, limit);
      limit = (placed[i] as number) + LABEL;
    }
  }
  return placed;
}

function zigzag(x: number, y: number): Markup {
  const points = Array.from(
    { length: 10 },
    (_, i) => `${x + (i * BAR) / 9},${y + (i % 2 === 0 ? -3 : 3)}`,
  ).join(' ');
  return el('polyline', { points, fill: 'none', stroke: '#fff', 'stroke-width': 4 });
}

function columnMarkup(column: Column, x: number, height: number, perMicron: number): Markup {
  const floor = HEAD + height;
  const parts: Markup[] = [
    el('text', { x, y: 14, 'font-weight': 600, fill: '#1a1a1a' }, column.title),
    el('text', { x, y: 29, fill: '#555' }, column.note),
  ];
  let y = floor;
  const middles: number[] = [];
  for (const slice of column.slices) {
    const h = Math.max(1.5, drawn(slice) * perMicron);
    y -= h;
    middles.push(y + h / 2);
    const dashes = slice.unknown ? '4 3' : undefined;
    parts.push(
      el('rect', {
        'data-layer': slice.name,
        x,
        y,
        width: BAR,
        height: h,
        fill: slice.colour?.hex ?? '#ffffff',
        stroke: '#333',
        'stroke-width': 0.7,
        'stroke-dasharray': dashes,
      }),
    );
    if ((slice.film?.likely ?? 0) > BREAK) parts.push(zigzag(x, y + h / 2));
  }
  const labels = spread(middles, HEAD + 10, floor - 14);
  column.slices.forEach((slice, i) => {
    const from = middles[i] as number;
    const to = labels[i] as number;
    parts.push(
      el('polyline', {
        points: `${x + BAR},${from} ${x + BAR + 10},${from} ${x + BAR + 22},${to} ${x + BAR + 28},${to}`,
        fill: 'none',
        stroke: '#777',
        'stroke-width': 0.7,
      }),
    );
    parts.push(
      el('text', { 'data-layer': slice.name, x: x + TO_LABEL, y: to - 1, fill: '#1a1a1a' }, slice.label),
    );
    parts.push(el('text', { x: x + TO_LABEL, y: to + 12, 'font-size': 11, fill: '#555' }, slice.detail));
  });
  return el('g', {}, parts);
}

function words(columns: readonly Column[]): string {
  return columns
    .map(
      (c) =>
        `${c.title}, from below: ${c.slices.map((s) => `${s.label} (${s.detail}${s.colour ? `, colour ${screenWords(s.colour)}` : ''})`).join('; ') || 'no layer'}.`,
    )
    .join(' ');
}

/**
 * The drawing as one SVG; undefined for a plan without layers. `id` keeps several on one page apart; `notice` stands at
 * its top.
 */
export function sectionDrawing(
  study: Study,
  id = 'section',
  notice = '',
  extent = WHOLE,
): Markup | undefined {
  if (study.layers.length === 0) return undefined;
  const columns = [
    ...study.areas.slice(0, extent.areas).map((a) => areaColumn(study, a.name, extent)),
    ...study.plan.samples.slice(0, extent.areas).map((s) => sampleColumn(study, s)),
  ].filter((c) => c.slices.length > 0);
  if (columns.length === 0) return undefined;
  const thickest = largest(columns.map((c) => c.slices.reduce((sum, s) => sum + drawn(s), 0)));
  const most = largest(columns.map((c) => c.slices.length));
  const perMicron = Math.min(4, Math.max(0.5, 420 / thickest));
  const height = Math.max(thickest * perMicron, most * LABEL + 24);
  const perRow = Math.min(3, columns.length);
  const width = columnWidth(columns);
  const rowHeight = HEAD + height + FOOT;
  const rows = Math.ceil(columns.length / perRow);
  const scale = 20 * perMicron;
  const top = notice ? 20 : 0;
  const key = `20 µm; layers over ${BREAK} µm are drawn broken, dashed ones have no known film`;
  return picture(
    id,
    Math.max(perRow * width, scale + 6 + key.length * 12 * ADVANCE, notice.length * 12 * ADVANCE) + 20,
    rows * rowHeight + 20 + top,
    `Section through ${study.plan.title ?? 'the painting'}`,
    `${notice}${notice && ' '}${words(columns)}`,
    ...(notice ? [el('text', { x: 10, y: 14, 'font-weight': 600, fill: '#1a1a1a' }, notice)] : []),
    columns.map((c, i) =>
      el(
        'g',
        { transform: `translate(10 ${Math.floor(i / perRow) * rowHeight + 6 + top})` },
        columnMarkup(c, (i % perRow) * width, height, perMicron),
      ),
    ),
    el(
      'g',
      { transform: `translate(10 ${rows * rowHeight + 8 + top})` },
      el('line', { x1: 0, y1: 0, x2: scale, y2: 0, stroke: '#333', 'stroke-width': 2 }),
      el('text', { x: scale + 6, y: 4, fill: '#333' }, key),
    ),
  );
}
