import { cardStyle } from './card-style.ts';

/** Style sheet of a page of tables: plain type, black on white in print, made for paper first. */
export const htmlStyle = `
:root { color-scheme: light dark; --ink: #000; --paper: #fff; --line: #999; }
@media screen and (prefers-color-scheme: dark) { :root { --ink: #eee; --paper: #111; --line: #777; } }
* { box-sizing: border-box; }
body {
  margin: 0 auto; padding: 1.5rem; max-width: 64rem;
  font: 1rem/1.45 "Liberation Sans", Arial, Helvetica, sans-serif; color: var(--ink); background: var(--paper);
  overflow-wrap: break-word;
}
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .3rem; overflow-wrap: anywhere; }
h2 { font-size: 1.2rem; margin: 2rem 0 .5rem; border-bottom: 2px solid var(--ink); padding-bottom: .15rem; }
p, ul, dl { margin: .4rem 0; }
ul { padding-left: 1.2rem; }
.facts { display: flex; flex-wrap: wrap; gap: .2rem 2rem; margin: .6rem 0; }
.facts dt { font-size: .8rem; }
.facts dd { margin: 0; font-weight: bold; }
.facts div { min-width: 6rem; }
.caution { border: 3px solid var(--ink); padding: .2rem .8rem .4rem; margin: 1rem 0; }
.caution h2 { border: 0; margin: .3rem 0; padding: 0; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-size: .9em; padding: .3rem 0; max-width: calc(100vw - 6rem); }
th, td { text-align: left; vertical-align: baseline; padding: .2rem .5rem; border-bottom: 1px solid var(--line); }
thead th { border-bottom: 2px solid var(--ink); vertical-align: bottom; line-height: 1.2; }
tbody { border-bottom: 2px solid var(--ink); }
.number { text-align: right; white-space: nowrap; }
thead .number { white-space: normal; }
.unit { font-weight: normal; white-space: nowrap; }
.full { font-size: .85rem; }
.full th, .full td { padding: .12rem .4rem; }
.full td:last-child { white-space: nowrap; }
.full tbody th { font-weight: normal; }
.full tbody th[scope="rowgroup"] { font-weight: bold; vertical-align: top; }
.conditions, .listing { font-size: .9rem; }
.inputs tbody th, .conditions td { overflow-wrap: anywhere; }
.listing tbody th { font-weight: normal; }
.conditions .number { font-weight: bold; }
.inputs code { font-family: "Liberation Mono", "Courier New", monospace; font-size: .75rem; overflow-wrap: anywhere; }
.terms { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; }
.terms dt { font-weight: bold; }
.terms dd { margin: 0; }
figure { margin: 1.2rem 0; }
figure svg { display: block; width: 100%; height: auto; max-width: 45rem; }
figcaption { max-width: 45rem; font-size: .9rem; }
@media screen and (prefers-color-scheme: dark) { figure > svg { filter: invert(1); } }
${cardStyle}
@media print {
  @page { size: A4; margin: 10mm; }
  body { padding: 0; max-width: none; font-size: 9.5pt; }
  h1 { font-size: 16pt; }
  h2 { font-size: 12pt; margin-top: 5mm; break-after: avoid; }
  thead { display: table-header-group; }
  .newpage { break-before: page; }
  .newpage h2 { margin-top: 0; }
  tr, .full tbody, .terms, figure, .caution { break-inside: avoid; }
  caption { break-after: avoid; max-width: none; }
  .scroll { overflow: visible; }
  .full { font-size: 8pt; }
  .conditions, .listing { font-size: 8.5pt; }
  figure { margin: 3mm 0; }
  figure svg { max-width: 150mm; }
}
`;
