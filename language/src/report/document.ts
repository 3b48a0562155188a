/** A report as blocks, the same for page, Markdown and terminal: what is said is decided once, here and in `parts`. */
import type { Markup } from './markup.ts';

/** One cell of a table. */
export interface Cell {
  readonly text: string;
  /** a small field of this colour before the text */
  readonly swatch?: string;
  /** a hatched field instead: the colour is not known */
  readonly hatched?: true;
  /** name of the layer the row is about: pages link it with the text */
  readonly layer?: string;
}

/** One piece of a report. */
export type Block =
  | { readonly kind: 'words'; readonly text: string; readonly quiet?: boolean }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | {
      readonly kind: 'table';
      readonly caption?: string;
      readonly head: readonly string[];
      readonly rows: readonly (readonly (string | Cell)[])[];
    }
  /** `name` is a file name without ending; `alternative` says in words what the drawing shows */
  | {
      readonly kind: 'drawing';
      readonly name: string;
      readonly alternative: string;
      readonly drawing: Markup;
    };

/** One chapter of a report. */
export interface Part {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** A whole report; `htmlReport` and `markdownReport` print it. */
export interface Report {
  readonly title: string;
  readonly subtitle: string;
  /** what to know before anything below is believed: errors in the plan */
  readonly notice?: string;
  readonly parts: readonly Part[];
}

export const words = (text: string, quiet = false): Block => ({ kind: 'words', text, quiet });
export const list = (items: readonly string[]): Block => ({ kind: 'list', items });
export const table = (
  head: readonly string[],
  rows: readonly (readonly (string | Cell)[])[],
  caption?: string,
): Block => ({ kind: 'table', head, rows, caption });
