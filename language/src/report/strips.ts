/** Build-up strips: per area the colour after every layer, the target beside the last, and how far apart they are. */
import { screenWords } from '../optics/css.ts';
import type { Study } from '../results/study.ts';
import { type Extent, WHOLE } from './extent.ts';
import { el, largest, type Markup, picture } from './markup.ts';

const CELL = 96;
const ROW = 92;
const LEFT = 110;

const shortened = (text: string, most: number) => (text.length > most ? `${text.slice(0, most - 1)}…` : text);

interface Swatch {
  readonly label: string;
  readonly hex: string;
  readonly note: string;
}

interface Strip {
  readonly area: string;
  readonly swatches: readonly Swatch[];
}

function strips(
  study: Study,
  hexOf: (lab: readonly [number, number, number]) => string,
  extent: Extent,
): Strip[] {
  return study.areas.slice(0, extent.areas).flatMap((area) => {
    const swatches = area
      .buildUp()
      .slice(-extent.layers)
      .map(
        (b): Swatch => ({
          label: b.layer,
          hex: b.colour.hex,
          note: `${screenWords(b.colour)} ±${b.colour.radius.toFixed(1)} ${b.colour.confidence}`,
        }),
      );
    if (swatches.length === 0) return [];
    const target = area.target();
    const aim: Swatch[] = target
      ? [
          {
            label: 'target',
            hex: hexOf(target.lab),
            note:
              target.deltaE00 === undefined
                ? 'not predicted'
                : `ΔE00 ${target.deltaE00.toFixed(1)} of ${target.within}`,
          },
        ]
      : [];
    return [{ area: area.name, swatches: [...swatches, ...aim] }];
  });
}

/** One SVG with a row an area; undefined where no colour could be predicted. */
export function buildUpStrips(
  study: Study,
  hexOf: (lab: readonly [number, number, number]) => string,
  id = 'strips',
  extent = WHOLE,
): Markup | undefined {
  const rows = strips(study, hexOf, extent);
  if (rows.length === 0) return undefined;
  const perRow = 8;
  const lines = rows.flatMap((r) =>
    Array.from({ length: Math.ceil(r.swatches.length / perRow) }, (_, i) => ({
      area: i === 0 ? r.area : '',
      swatches: r.swatches.slice(i * perRow, (i + 1) * perRow),
    })),
  );
  const widest = largest(lines.map((l) => l.swatches.length));
  const description = rows
    .map((r) => `${r.area}: ${r.swatches.map((s) => `${s.label} ${s.note}`).join(', ')}.`)
    .join(' ');
  return picture(
    id,
    LEFT + widest * CELL + 10,
    lines.length * ROW + 10,
    'Colour after each layer, area by area',
    description,
    lines.map((line, i) =>
      el(
        'g',
        { transform: `translate(0 ${i * ROW + 8})` },
        el('text', { x: 4, y: 26, 'font-weight': 600, fill: '#1a1a1a' }, shortened(line.area, 16)),
        ...line.swatches.map((s, j) =>
          el(
            'g',
            { transform: `translate(${LEFT + j * CELL} 0)` },
            el('rect', {
              x: 0,
              y: 0,
              width: CELL - 6,
              height: 44,
              fill: s.hex,
              stroke: s.label === 'target' ? '#111' : '#777',
              'stroke-width': s.label === 'target' ? 2 : 0.7,
              'stroke-dasharray': s.label === 'target' ? '5 3' : undefined,
            }),
            el('text', { x: 0, y: 59, fill: '#1a1a1a', 'font-size': 11 }, shortened(s.label, 15)),
            el('text', { x: 0, y: 73, fill: '#555', 'font-size': 10 }, s.note),
          ),
        ),
      ),
    ),
  );
}

/** A bare strip of colours for a hover: the build-up on one area up to a layer, the last wider. Undefined without colours. */
export function miniStrip(study: Study, area: string, upTo: number): Markup | undefined {
  const steps =
    study.areas
      .find((a) => a.name === area)
      ?.buildUp()
      .filter((b) => b.index <= upTo) ?? [];
  if (steps.length === 0) return undefined;
  const shown = steps.slice(-12);
  const width = (i: number) => (i === shown.length - 1 ? 60 : 26);
  let x = 0;
  const cells = shown.map((b, i) => {
    const cell = el('rect', {
      x,
      y: 0,
      width: width(i),
      height: 22,
      fill: b.colour.hex,
      stroke: '#777',
      'stroke-width': 0.5,
    });
    x += width(i);
    return cell;
  });
  const words = shown.map((b) => `${b.layer} ${screenWords(b.colour)}`).join(', ');
  return picture('strip', x, 22, `Build-up on ${area}`, words, ...cells);
}
