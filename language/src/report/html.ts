/** A report as one self-contained page: no script, nothing loaded, prints on A4. */
import type { Block, Report } from './document.ts';
import { el, join, type Markup } from './markup.ts';
import { STYLE } from './style.ts';

const slug = (text: string) => text.toLowerCase().replace(/[^a-z0-9]+/g, '-');

function blockMarkup(block: Block): Markup {
  switch (block.kind) {
    case 'words':
      return el('p', block.quiet ? { class: 'quiet' } : {}, block.text);
    case 'list':
      return el('ul', {}, ...block.items.map((i) => el('li', {}, i)));
    case 'drawing':
      return el('figure', {}, block.drawing, el('figcaption', {}, block.alternative));
    case 'table':
      return el(
        'div',
        {
          class: 'wide',
          role: 'region',
          tabindex: 0,
          'aria-label': block.caption ?? block.head.filter(Boolean).join(', '),
        },
        el(
          'table',
          {},
          block.caption !== undefined && el('caption', {}, block.caption),
          el(
            'thead',
            {},
            el('tr', {}, ...block.head.map((h) => (h ? el('th', { scope: 'col' }, h) : el('td')))),
          ),
          el(
            'tbody',
            {},
            ...block.rows.map((row) =>
              el(
                'tr',
                {},
                ...row.map((c) =>
                  typeof c === 'string'
                    ? el('td', {}, c)
                    : el(
                        'td',
                        { 'data-layer': c.layer },
                        c.swatch !== undefined &&
                          // a drawing, not a style: pages may forbid inline styles
                          el(
                            'svg',
                            { class: 'swatch', viewBox: '0 0 16 10', 'aria-hidden': 'true' },
                            el('rect', { width: 16, height: 10, fill: c.swatch }),
                          ),
                        c.text,
                      ),
                ),
              ),
            ),
          ),
        ),
      );
  }
}

const header = ({ title, subtitle, notice }: Report) =>
  el(
    'header',
    {},
    el('h1', {}, title),
    el('p', {}, subtitle),
    ...(notice ? [el('p', { class: 'notice' }, notice)] : []),
  );

/** The parts one after another, for a page that brings its own frame. */
export const bodyMarkup = (report: Report): string => {
  const parts = report.parts.map((p) =>
    el(
      'section',
      { 'aria-labelledby': slug(p.id) },
      el('h2', { id: slug(p.id) }, p.title),
      ...p.blocks.map(blockMarkup),
    ),
  );
  return join(header(report), el('main', {}, ...parts)).markup;
};

/** A report as one HTML page that loads nothing and holds no script. */
export function htmlReport(report: Report): string {
  const ids = report.parts.map((p) => slug(p.id));
  const page = el(
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
      el('title', {}, report.title),
      el('style', {}, { markup: STYLE }),
    ),
    el(
      'body',
      {},
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
            ...p.blocks.map(blockMarkup),
          ),
        ),
      ),
    ),
  );
  return `<!DOCTYPE html>\n${join(page).markup}\n`;
}
