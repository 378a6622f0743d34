import { htmlStyle } from '../tables/card/html-style.ts';

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
.unreal { border-left: .5rem solid; padding-left: .8rem; border-image: repeating-linear-gradient(45deg, var(--ink) 0 2px, var(--paper) 2px 6px) 8; }
.values td, .values th { font-size: .95rem; }
.values tbody th { font-weight: normal; max-width: 18rem; }
.pairings tbody th { font-weight: normal; }
.pairings strong { font-size: 1.15rem; }
.pairings svg { display: block; width: 13rem; height: 1.3rem; color: var(--ink); }
.pairings .scale { display: flex; justify-content: space-between; width: 13rem; font-weight: normal; font-size: .8rem; }
.pairings td:last-child { white-space: nowrap; }
.readings { width: auto; }
ul.caution, ul.warning { list-style: none; padding-left: .8rem; }
pre { white-space: pre-wrap; overflow-wrap: anywhere; border-left: 3px solid var(--line); padding-left: .8rem; }
@media (max-width: 30rem) { body { padding: 0 .8rem 2rem; } caption { max-width: calc(100vw - 2rem); } }
@media print { nav, footer, .pages { display: none; } a { color: inherit; text-decoration: none; } }
`;
