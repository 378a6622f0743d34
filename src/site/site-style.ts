import { htmlStyle } from '../tables/card/html-style.ts';
import { benchStyle } from './bench-style.ts';

/**
 * Style sheet of the catalogue: that of the pages of tables, so that both look alike, with what a site has besides. One
 * colour, for what can be touched.
 */
export const siteStyle = `${htmlStyle}
:root { --touch: #00548c; }
@media screen and (prefers-color-scheme: dark) { :root { --touch: #8cc8f4; } }
@media screen {
  body { max-width: 76rem; padding: 0 1.5rem 3rem; font-size: clamp(1rem, .85rem + .25vw, 1.5rem); }
  h1 { margin-top: 1.2rem; }
  a { color: var(--touch); text-underline-offset: .15em; text-decoration-thickness: 1px; }
  a:hover { text-decoration-thickness: 2px; }
  :focus-visible { outline: 3px solid var(--touch); outline-offset: 2px; }
  tbody tr:hover { background: color-mix(in srgb, var(--touch) 8%, var(--paper)); }
}
.pages { border-bottom: 1px solid var(--line); }
nav ul { list-style: none; display: flex; flex-wrap: wrap; gap: 0 .25rem; margin: 0; padding: 0; }
nav li { margin: 0; }
nav a { display: inline-flex; align-items: center; min-height: 2.75rem; padding: 0 .75rem 0 0; text-decoration: none; }
nav a[aria-current] { color: var(--ink); font-weight: bold; border-bottom: 3px solid var(--ink); }
footer { margin-top: 3rem; border-top: 1px solid var(--line); font-size: .9rem; }
.answer { font-size: 1.15rem; }
.way, figcaption a { margin-right: 1em; }
div.unreal { padding: .1rem 0 .1rem 1.4rem; background: repeating-linear-gradient(45deg, var(--ink) 0 1.5px, transparent 1.5px 5px) 0 0 / .6rem 100% no-repeat; }
.values td, .values th { font-size: .95rem; }
.values tbody th { font-weight: normal; max-width: 18rem; }
.pairings tbody th { font-weight: normal; }
.pairings strong { font-size: 1.15rem; }
.pairings svg { display: block; width: 10rem; height: 1rem; color: var(--ink); }
.pairings .scale { display: flex; justify-content: space-between; width: 10rem; font-weight: normal; font-size: .8rem; }
[hidden] { display: none !important; }
.find { border: 2px solid var(--ink); padding: .4rem 1rem; margin: 1.2rem 0; }
.find fieldset { border: 0; padding: 0; margin: 0; display: flex; flex-wrap: wrap; gap: .4rem 1.2rem; }
.find legend { font-weight: bold; padding: 0; margin-bottom: .3rem; }
.find label { display: block; font-size: .85rem; }
.find input, .find select, .find button, .chosen a, .chosen button {
  font: inherit; min-height: 2.75rem; padding: .2rem .6rem; color: var(--ink); background: var(--paper);
  border: 1px solid var(--touch); border-radius: 0; font-variant-numeric: tabular-nums;
}
.find input[type="search"] { width: 100%; }
.find button, .chosen a, .chosen button { color: var(--touch); display: inline-flex; align-items: center; text-decoration: none; }
.choice { position: relative; min-width: min(26rem, 100%); }
.choice input[role="combobox"] { width: 100%; }
.choice [role="listbox"] {
  position: absolute; z-index: 2; left: 0; right: 0; max-height: 22rem; overflow-y: auto; margin: 0; padding: 0; list-style: none;
  background: var(--paper); border: 2px solid var(--ink); border-top: 0;
}
.choice [role="option"] { min-height: 2.75rem; padding: .5rem .6rem; margin: 0; border-bottom: 1px solid var(--line); cursor: pointer; overflow-wrap: anywhere; }
.choice [role="option"]:hover { background: color-mix(in srgb, var(--touch) 8%, var(--paper)); }
.choice [role="option"][aria-selected="true"] { border-left: .5rem solid var(--touch); font-weight: bold; }
.matches { list-style: none; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: 0 1.5rem; align-items: baseline; }
.matches a { display: inline-flex; align-items: center; min-height: 2.75rem; margin-right: .6rem; }
.chosen { display: flex; flex-wrap: wrap; gap: .6rem 1.2rem; align-items: center; margin: .8rem 0; }
.choose { display: inline-flex; min-width: 2.75rem; min-height: 2.75rem; align-items: center; justify-content: center; }
.choose input { width: 1.4rem; height: 1.4rem; accent-color: var(--touch); }
.compared .unequal { border-left: 4px double var(--ink); }
.compared strong, .need-figures strong { font-size: 1.15rem; }
#need-form { margin: .8rem 0; }
#need-form fieldset + fieldset { margin-top: .8rem; }
#need-form input[type="range"] { width: min(17rem, 78vw); padding: 0; border: 0; accent-color: var(--touch); display: block; }
#need-form output { display: block; min-height: 1.5em; font-variant-numeric: tabular-nums; }
#need-form select { max-width: 100%; }
#need-form .wrong { display: block; }
#need-form .wrong:empty { display: none; }
#need-told:empty { display: none; }
.need-figures th[scope="row"] { font-weight: normal; }
.need-figures tbody + tbody th { padding-top: .5rem; }
.need-figures tbody + tbody th[scope="row"] { padding-top: .2rem; }
.pairings td, .pairings th { padding: .2rem .35rem; }
.pairings .note { font-size: .85rem; min-width: 8rem; }
.pairings .why { min-width: 9rem; font-size: .9rem; }
.readings { width: auto; }
ul.caution, ul.warning { list-style: none; padding-left: .8rem; }
${benchStyle.trim()}
pre { white-space: pre-wrap; overflow-wrap: anywhere; border-left: 3px solid var(--line); padding-left: .8rem; }
@media (max-width: 30rem) { body { padding: 0 .8rem 2rem; } caption { max-width: calc(100vw - 2rem); } }
@media print { nav, footer, .pages, #need-form { display: none; } a { color: inherit; text-decoration: none; } }
`;
