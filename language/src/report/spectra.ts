/** Reflectance of the finished areas, 400 to 700 nm, as seen through their upper surface. */
import { leaving } from '../optics/transport.ts';
import { wavelengths } from '../optics/wavelengths.ts';
import type { Study } from '../results/study.ts';
import { type Extent, WHOLE } from './extent.ts';
import { el, type Markup, picture } from './markup.ts';

const LEFT = 46;
const WIDTH = 520;
const HEIGHT = 220;
const TOP = 12;
const DASHES = ['', '7 4', '2 3', '10 3 2 3', '14 4', '4 2 1 2', '1 5', '10 3 2 3 2 3', '20 3 4 3', '5 8'];
/** Dashes of a line; beyond those told apart by eye alone, the same ones longer. */
const dashes = (i: number): string | undefined => {
  const longer = 1 + Math.floor(i / DASHES.length);
  const pattern = DASHES[i % DASHES.length]!;
  if (longer === 1) return pattern || undefined;
  return (pattern || '30 2')
    .split(' ')
    .map((d) => Number(d) * longer)
    .join(' ');
};

const x = (nm: number) => LEFT + ((nm - 400) / 300) * WIDTH;
const y = (r: number) => TOP + (1 - Math.min(1, Math.max(0, r))) * HEIGHT;

interface Line {
  readonly area: string;
  readonly hex: string;
  readonly values: Float64Array;
}

function lines(study: Study, extent: Extent): Line[] {
  return study.areas.slice(0, extent.areas).flatMap((area) => {
    const last = area.buildUp().at(-1)?.colour;
    const state = study.beneath(area.name);
    if (!last || !state) return [];
    return [{ area: area.name, hex: last.hex, values: leaving(state.stack, state.face) }];
  });
}

/** One drawing of all areas; undefined where nothing can be predicted. */
export function spectraDrawing(study: Study, id = 'spectra', extent = WHOLE): Markup | undefined {
  const all = lines(study, extent);
  if (all.length === 0) return undefined;
  const described = all
    .map(
      (l) =>
        `${l.area}: ${[0, 10, 20, 30].map((i) => `${Math.round((l.values[i] ?? 0) * 100)} % at ${wavelengths[i]} nm`).join(', ')}`,
    )
    .join('; ');
  const legend = TOP + HEIGHT + 44;
  return picture(
    id,
    LEFT + WIDTH + 30,
    legend + all.length * 18 + 6,
    'Reflectance of the finished areas',
    `${described}.`,
    ...[0, 0.25, 0.5, 0.75, 1].map((r) =>
      el(
        'g',
        {},
        el('line', { x1: LEFT, x2: LEFT + WIDTH, y1: y(r), y2: y(r), stroke: '#ddd' }),
        el(
          'text',
          { x: LEFT - 8, y: y(r) + 4, 'text-anchor': 'end', fill: '#555', 'font-size': 11 },
          `${r * 100} %`,
        ),
      ),
    ),
    ...[400, 450, 500, 550, 600, 650, 700].map((nm) =>
      el(
        'text',
        { x: x(nm), y: TOP + HEIGHT + 18, 'text-anchor': 'middle', fill: '#555', 'font-size': 11 },
        nm === 700 ? '700 nm' : String(nm),
      ),
    ),
    all.map((l, i) =>
      el('polyline', {
        points: Array.from(
          l.values,
          (v, k) => `${Math.round(x(wavelengths[k] ?? 400) * 10) / 10},${Math.round(y(v) * 10) / 10}`,
        ).join(' '),
        fill: 'none',
        stroke: '#222',
        'stroke-width': 2,
        'stroke-dasharray': dashes(i),
      }),
    ),
    all.map((l, i) =>
      el(
        'g',
        { transform: `translate(${LEFT} ${legend + i * 18})` },
        el('line', {
          x1: 0,
          x2: 44,
          y1: -4,
          y2: -4,
          stroke: '#222',
          'stroke-width': 2,
          'stroke-dasharray': dashes(i),
        }),
        el('rect', {
          x: 52,
          y: -11,
          width: 22,
          height: 12,
          fill: l.hex,
          stroke: '#777',
          'stroke-width': 0.7,
        }),
        el('text', { x: 82, y: 0, fill: '#1a1a1a' }, l.area),
      ),
    ),
  );
}
