/** Markup from words. Whatever stands in a plan is text here and can never become markup. */
import { legible } from '../plan/legible.ts';

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** XML forbids most control characters even when escaped, and a direction mark would turn what stands beside it. */
export const escapeMarkup = (text: string): string =>
  legible(text).replace(/[&<>"']/g, (c) => ENTITIES[c] as string);

/** Text that is markup already, so that it is not escaped again. */
export interface Markup {
  readonly markup: string;
}

type Child = Markup | string | number | undefined | false | readonly Child[];

function inner(child: Child): string {
  if (child === undefined || child === false) return '';
  if (Array.isArray(child)) return child.map(inner).join('');
  return typeof child === 'object' ? (child as Markup).markup : escapeMarkup(String(child));
}

const VOID = new Set(['br', 'hr', 'img', 'meta', 'link', 'col']);
const SHAPES = new Set(['rect', 'line', 'path', 'circle', 'polyline', 'polygon']);

/** One element; attributes that are undefined or false are left out. */
export function el(
  name: string,
  attributes: Readonly<Record<string, string | number | undefined | false>> = {},
  ...children: Child[]
): Markup {
  const written = Object.entries(attributes)
    .filter(([, v]) => v !== undefined && v !== false)
    .map(([k, v]) => ` ${k}="${escapeMarkup(typeof v === 'number' ? short(v) : String(v))}"`)
    .join('');
  if (VOID.has(name)) return { markup: `<${name}${written}>` };
  const content = inner(children);
  return {
    markup:
      SHAPES.has(name) && content === '' ? `<${name}${written}/>` : `<${name}${written}>${content}</${name}>`,
  };
}

export const join = (...children: Child[]): Markup => ({ markup: inner(children) });

/** Of any number of figures; 0 for none. */
export const largest = (values: readonly number[]): number =>
  values.reduce((most, v) => Math.max(most, v), 0);

const short = (v: number): string => String(Math.round(v * 100) / 100);

/** A picture with its title and description for those who do not see it. `id` must be unique on the page. */
export function picture(
  id: string,
  width: number,
  height: number,
  title: string,
  description: string,
  ...children: Child[]
): Markup {
  return el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${short(width)} ${short(height)}`,
      width,
      height,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      'font-family': 'system-ui, sans-serif',
      'font-size': 12,
    },
    el('title', { id: `${id}-title` }, title),
    el('desc', { id: `${id}-desc` }, description),
    ...children,
  );
}
