/** The fatness ladder: per area the fatness of each film from below upwards, its interval, and the steps that offend. */
import { fatness } from '../features/figures.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import type { Finding } from '../rules/rule.ts';
import { WHOLE } from './extent.ts';
import { el, type Markup, picture } from './markup.ts';

const LEFT = 190;
const WIDTH = 420;
const STEP = 26;
const FROM = -0.2;
const TO = 1;

const x = (v: number) => LEFT + ((Math.min(TO, Math.max(FROM, v)) - FROM) / (TO - FROM)) * WIDTH;

const AXIS = [0, 0.25, 0.5, 0.75, 1];

function ladder(
  area: string,
  layers: readonly LayerStudy[],
  offending: ReadonlySet<number>,
  id: string,
): Markup {
  const height = layers.length * STEP + 44;
  const rows = layers.map((l, i) => {
    const f = (l.composition as NonNullable<LayerStudy['composition']>).fatness;
    const y = height - 40 - i * STEP;
    const bad = offending.has(l.layer.index);
    return el(
      'g',
      {},
      el(
        'text',
        { 'data-layer': l.layer.name, x: LEFT - 10, y: y + 4, 'text-anchor': 'end', fill: '#1a1a1a' },
        `${bad ? '▲ ' : ''}${l.layer.name}`,
      ),
      el('line', {
        x1: x(f.low),
        x2: x(f.high),
        y1: y,
        y2: y,
        stroke: bad ? '#a3180f' : '#4a5a6a',
        'stroke-width': 5,
        'stroke-linecap': 'round',
        opacity: 0.45,
      }),
      bad
        ? el('rect', {
            x: x(f.likely) - 5,
            y: y - 5,
            width: 10,
            height: 10,
            fill: '#a3180f',
            transform: `rotate(45 ${x(f.likely)} ${y})`,
          })
        : el('circle', { cx: x(f.likely), cy: y, r: 5, fill: '#23303c' }),
      el('text', { x: LEFT + WIDTH + 12, y: y + 4, fill: '#555', 'font-size': 11 }, fatness(f)),
    );
  });
  const described = layers
    .map(
      (l) =>
        `${l.layer.name} ${fatness(l.composition?.fatness)}${offending.has(l.layer.index) ? ', leaner than it should be' : ''}`,
    )
    .join('; ');
  return picture(
    id,
    LEFT + WIDTH + 140,
    height,
    `Fatness of the layers on ${area}`,
    `From below: ${described}.`,
    ...AXIS.map((v) =>
      el(
        'g',
        {},
        el('line', { x1: x(v), x2: x(v), y1: 8, y2: height - 26, stroke: '#ddd' }),
        el(
          'text',
          { x: x(v), y: height - 10, 'text-anchor': 'middle', fill: '#555', 'font-size': 11 },
          `${v * 100} %`,
        ),
      ),
    ),
    rows,
  );
}

/** One ladder an area that has at least two films; areas with the same layers share one. */
export function fatnessLadders(
  study: Study,
  findings: readonly Finding[],
  id = 'ladder',
  extent = WHOLE,
): readonly { readonly areas: readonly string[]; readonly drawing: Markup }[] {
  const offending = new Set(
    findings.filter((f) => f.rule === 'lean-over-fat' && f.layer !== undefined).map((f) => f.layer as number),
  );
  const groups = new Map<string, { areas: string[]; layers: readonly LayerStudy[] }>();
  for (const area of study.areas) {
    const layers = study.layers.filter((l) => l.composition && l.areas.includes(area.name));
    if (layers.length < 2) continue;
    const key = layers.map((l) => l.layer.index).join(' ');
    const group = groups.get(key) ?? { areas: [], layers };
    group.areas.push(area.name);
    groups.set(key, group);
  }
  return [...groups.values()].slice(0, extent.areas).map(({ areas, layers }, i) => ({
    areas,
    drawing: ladder(areas.join(', '), layers.slice(-extent.layers), offending, `${id}-${i}`),
  }));
}
