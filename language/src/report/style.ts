/** The look of a report on screen and on paper. */
export const STYLE = `
:root { color-scheme: light dark; --ink: #1c1c1c; --quiet: #595959; --line: #c9c9c9; --ground: #ffffff; --link: #0b5394; }
@media (prefers-color-scheme: dark) { :root { --ink: #ececec; --quiet: #b4b4b4; --line: #555555; --ground: #1d1d1d; --link: #8ec1f5; } }
body { margin: 2rem auto; max-width: 68rem; padding: 0 1.2rem; font: 1rem/1.5 system-ui, sans-serif; color: var(--ink); background: var(--ground); }
h1 { margin-bottom: 0; line-height: 1.2; }
header .notice { font-weight: 600; border-left: .3rem solid var(--ink); padding-left: .7rem; }
h2 { margin-top: 2.2rem; border-bottom: 1px solid var(--line); padding-bottom: .2rem; }
a { color: var(--link); }
nav ol { columns: 3; padding-left: 1.4rem; }
.wide { overflow-x: auto; margin: 1rem 0; }
table { border-collapse: collapse; font-size: .9rem; width: 100%; }
caption { text-align: left; font-weight: 600; padding: .3rem 0; }
th, td { text-align: left; vertical-align: top; padding: .3rem .7rem .3rem 0; border-bottom: 1px solid var(--line); }
td:last-child, th:last-child { padding-right: 0; }
.swatch { display: inline-block; width: 1.6em; height: 1em; margin-right: .5em; vertical-align: -.12em; border: 1px solid #888; print-color-adjust: exact; }
.quiet, figcaption { color: var(--quiet); font-size: .9rem; }
figure { margin: 1.2rem 0; overflow-x: auto; }
figure svg { background: #ffffff; max-width: 100%; height: auto; print-color-adjust: exact; }
li { margin: .2rem 0; }
@page { size: A4; margin: 16mm; }
@media print {
  :root { --ink: #000000; --quiet: #444444; --line: #bbbbbb; --ground: #ffffff; --link: #000000; }
  body { margin: 0; max-width: none; padding: 0; font-size: 9.5pt; }
  table { font-size: 7.6pt; }
  h2 { break-after: avoid; }
  tr, figure, li { break-inside: avoid; }
  .wide, figure { overflow: visible; }
}
`;
