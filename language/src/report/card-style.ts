/** The look of sitting cards: large type, one side of A4 a card, one column on a phone. Sizes as `card-fit` reckons them. */
import { SIZES } from './card-fit.ts';
import { STYLE } from './style.ts';

const sizes = Object.entries(SIZES)
  .map(([name, pt]) => `  .card.${name} { font-size: ${pt}pt; }`)
  .join('\n');

export const CARD_STYLE = `${STYLE}
body.cards { max-width: 48rem; font-size: 1.2rem; line-height: 1.35; overflow-wrap: anywhere; }
.card { margin: 2.5rem 0; border-top: .3rem solid var(--ink); }
.card h2 { margin: .4rem 0 0; border: 0; padding: 0; font-size: 1.5em; line-height: 1.25; }
.day { white-space: nowrap; }
.card p, .card ul { margin: 0 0 .25em; }
.card section { display: grid; grid-template-columns: 5.5em 1fr; column-gap: 1em; border-top: 1px solid var(--line); padding: .4em 0; }
.card h3 { margin: 0; font-size: 1em; }
.card ul { list-style: none; padding: 0; }
.card li { margin: 0 0 .25em; }
.card table { font-size: 1em; table-layout: fixed; }
.card th, .card td { border: 0; padding: 0 0 .25em; vertical-align: middle; font-weight: 400; line-height: 1.35; }
.card :is(th, td):nth-child(2) { text-align: right; padding-right: .4em; }
.card td:nth-child(2) { padding-right: 0; }
.card th:nth-child(3) { padding-left: .4em; }
.card tr > :first-child { width: 28%; }
.card td + td { font-size: .85em; line-height: 2.2em; white-space: nowrap; }
.card .swatch { width: calc(100% - 5.6em); height: 2.2em; margin: 0 .4em 0 0; border-left: 0; vertical-align: middle; }
.card td:nth-child(2) .swatch { float: right; margin: 0 0 0 .4em; border-left: 1px solid #888; border-right: 0; }
.card .quiet, .card footer { font-size: .8em; color: var(--quiet); }
.card .read > div { font-size: .85em; }
.card footer { border-top: 1px solid var(--line); padding-top: .4em; }
.card .notice { font-weight: 600; border-left: .3rem solid var(--ink); padding-left: .7rem; }
.do li { padding-left: 1.4em; position: relative; }
.do li::before { content: ""; position: absolute; left: 0; top: .2em; width: .75em; height: .75em; border: 1.5px solid var(--ink); }
@media screen and (max-width: 34rem) {
  .card section { display: block; }
  .card h3 { margin-bottom: .2em; }
  .card :is(table, thead, tbody) { display: block; }
  .card tr { display: grid; grid-template-columns: 1fr 1fr; }
  .card tr > :first-child { grid-column: 1 / -1; width: auto; }
}
@page { margin: 12mm; }
@media print {
  .cards > header { display: none; }
  .card { margin: 0; border: 0; break-after: page; }
  .card:last-child { break-after: auto; }
  .card section { break-inside: avoid; display: grid; }
  .card footer, .card p { orphans: 1; widows: 1; }
${sizes}
}
`;
