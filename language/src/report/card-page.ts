/** Sitting cards as one page that loads nothing: on paper each on a side of A4, on a phone one below the other. */
import { deferringLine } from '../materials/cautions.ts';
import type { Card } from './card.ts';
import { fitted, READ } from './card-fit.ts';
import { CARD_STYLE } from './card-style.ts';
import type { Block, Part } from './document.ts';
import { blockMarkup, pageMarkup, plainTable } from './html.ts';
import { el, type Markup } from './markup.ts';

/** Parts whose lines are done one after another, and ticked off. */
const DONE: readonly string[] = ['ready', 'prepare', 'mix', 'lay'];

const block = (b: Block): Markup => (b.kind === 'table' ? plainTable(b) : blockMarkup(b));

/** Dates are not broken at their hyphens. */
const unbroken = (text: string): readonly (string | Markup)[] =>
  text.split(/(\d{4}-\d{2}-\d{2})/).map((t, i) => (i % 2 ? el('span', { class: 'day' }, t) : t));

const section = ({ id, title, blocks }: Part): Markup =>
  el(
    'section',
    { class: DONE.includes(id) ? 'do' : READ.includes(id) && 'read' },
    el('h3', {}, title),
    el('div', {}, blocks.map(block)),
  );

function cardMarkup(made: Card): Markup {
  const { card, size } = fitted(made, deferringLine.text);
  return el(
    'article',
    { class: `card ${size}` },
    el('h2', {}, unbroken(card.title)),
    el('p', {}, unbroken(card.subtitle)),
    card.notice !== undefined && el('p', { class: 'notice' }, card.notice),
    card.parts.map(section),
    el('footer', {}, deferringLine.text),
  );
}

/** `title` is the plan's. */
export const cardsPage = (title: string, cards: readonly Card[]): string =>
  pageMarkup(
    `${title}: sitting cards`,
    CARD_STYLE,
    'cards',
    el('header', {}, el('h1', {}, title)),
    el('main', {}, cards.map(cardMarkup)),
  );
