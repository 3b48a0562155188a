/** A report as one self-contained page: no script, nothing loaded, prints on A4. */
import type { Block, Cell, Part, Report } from './document.ts';
import { IN_FULL } from './extent.ts';
import { el, join, type Markup } from './markup.ts';
import { STYLE } from './style.ts';

const slug = (text: string) => text.toLowerCase().replace(/[^a-z0-9]+/g, '-');

export function blockMarkup(block: Block): Markup {
  switch (block.kind) {
    case 'words':
      return el('p', block.quiet ? { class: 'quiet' } : {}, block.text);
    case 'list':
      return el(
        'ul',
        {},
        block.items.map((i) => el('li', {}, i)),
      );
    case 'drawing':
      return el('figure', {}, block.drawing, el('figcaption', {}, block.alternative));
    case 'table':
      return tableMarkup(block, block.rows.map(rowMarkup));
  }
}

/** A drawing, not a style: pages may forbid inline styles. */
const swatch = ({ swatch: fill }: Cell): Markup =>
  el(
    'svg',
    { class: 'swatch', viewBox: '0 0 16 10', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    fill === undefined
      ? join(
          el('rect', { width: 16, height: 10, fill: '#ffffff' }),
          el('path', {
            d: 'M-2 12L12-2M3 12L17-2M8 12L22-2',
            stroke: '#777777',
            'vector-effect': 'non-scaling-stroke',
          }),
        )
      : el('rect', { width: 16, height: 10, fill }),
  );

type Table = Extract<Block, { kind: 'table' }>;

const rowMarkup = (row: Table['rows'][number]): Markup =>
  el(
    'tr',
    {},
    row.map((c) =>
      typeof c === 'string'
        ? el('td', {}, c)
        : el('td', { 'data-layer': c.layer }, (c.swatch !== undefined || c.hatched) && swatch(c), c.text),
    ),
  );

const tableMarkup = (block: Table, rows: readonly Markup[]): Markup =>
  el(
    'div',
    {
      class: 'wide',
      role: 'region',
      tabindex: 0,
      'aria-label': block.caption ?? block.head.filter(Boolean).join(', '),
    },
    plainTable(block, rows),
  );

/** A table that needs no room of its own to be moved about in. */
export const plainTable = (
  { caption, head, rows }: Table,
  made: readonly Markup[] = rows.map(rowMarkup),
): Markup =>
  el(
    'table',
    {},
    caption !== undefined && el('caption', {}, caption),
    el(
      'thead',
      {},
      el(
        'tr',
        {},
        head.map((h) => (h ? el('th', { scope: 'col' }, h) : el('td'))),
      ),
    ),
    el('tbody', {}, made),
  );

/** As many of the items as have room, as markup. */
function fitting<T>(all: readonly T[], make: (item: T) => Markup, room: number): readonly Markup[] {
  const made: Markup[] = [];
  let left = room;
  for (const item of all) {
    const one = make(item);
    left -= one.markup.length;
    if (left < 0) break;
    made.push(one);
  }
  return made;
}

const leftOut = (what: string): Markup => el('p', { class: 'quiet' }, `${what} ${IN_FULL}`);
const some = (shown: number, all: number, what: string): readonly Markup[] =>
  shown < all ? [leftOut(`${all - shown} of ${all} ${what} are left out here.`)] : [];

/** A block in no more than `room` letters and the few of the words that say what has no room. */
function shortened(block: Block, room: number): Markup {
  switch (block.kind) {
    case 'list': {
      const items = fitting(block.items, (i) => el('li', {}, i), room);
      return join(el('ul', {}, items), some(items.length, block.items.length, 'entries'));
    }
    case 'table': {
      const rows = fitting(block.rows, rowMarkup, room);
      return join(tableMarkup(block, rows), some(rows.length, block.rows.length, 'rows'));
    }
    default: {
      const whole = blockMarkup(block);
      if (whole.markup.length <= room) return whole;
      return leftOut(`A ${block.kind === 'drawing' ? 'drawing' : 'text'} too large for here is left out.`);
    }
  }
}

/** Letters a part of a shortened report may have: what is seen first has most. */
const ROOM: Readonly<Record<string, number>> = { pictures: 1_000_000, colours: 500_000 };
const ROOM_ELSE = 100_000;

/** What a block does not use of its share, the next ones have. */
function shortenedPart({ id, blocks }: Part): readonly Markup[] {
  let room = ROOM[id] ?? ROOM_ELSE;
  return blocks.map((block, i) => {
    const made = shortened(block, Math.max(0, Math.floor(room / (blocks.length - i))));
    room -= made.markup.length;
    return made;
  });
}

const header = ({ title, subtitle, notice }: Report) =>
  el(
    'header',
    {},
    el('h1', {}, title),
    el('p', {}, subtitle),
    ...(notice ? [el('p', { class: 'notice' }, notice)] : []),
  );

/**
 * The parts one after another, for a page that brings its own frame and is drawn again while somebody types: long tables
 * are cut short, and say so.
 */
export const bodyMarkup = (report: Report): string => {
  const parts = report.parts.map((p) =>
    el('section', { 'aria-labelledby': slug(p.id) }, el('h2', { id: slug(p.id) }, p.title), shortenedPart(p)),
  );
  return join(header(report), el('main', {}, parts)).markup;
};

/** A page that loads nothing and holds no script. */
export const pageMarkup = (
  title: string,
  style: string,
  kind: string | undefined,
  ...body: Markup[]
): string =>
  `<!DOCTYPE html>\n${
    el(
      'html',
      { lang: 'en' },
      el(
        'head',
        {},
        el('meta', { charset: 'utf-8' }),
        el('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
        el('meta', {
          'http-equiv': 'Content-Security-Policy',
          content: "default-src 'none'; style-src 'unsafe-inline'",
        }),
        el('title', {}, title),
        el('style', {}, { markup: style }),
      ),
      el('body', { class: kind }, body),
    ).markup
  }\n`;

/** A report as one HTML page that loads nothing and holds no script. */
export function htmlReport(report: Report): string {
  const ids = report.parts.map((p) => slug(p.id));
  return pageMarkup(
    report.title,
    STYLE,
    undefined,
    header(report),
    el(
      'nav',
      { 'aria-label': 'Contents' },
      el('ol', {}, ...report.parts.map((p, i) => el('li', {}, el('a', { href: `#${ids[i]}` }, p.title)))),
    ),
    el(
      'main',
      {},
      ...report.parts.map((p, i) =>
        el(
          'section',
          { 'aria-labelledby': ids[i] },
          el('h2', { id: ids[i] }, p.title),
          p.blocks.map(blockMarkup),
        ),
      ),
    ),
  );
}
