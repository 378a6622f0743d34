/** What the bench page has besides: large fields, the limit above all, the curve beside the rows where there is room. */
export const benchStyle = `
.bench-head { display: flex; flex-wrap: wrap; gap: 0 1.5rem; align-items: baseline; }
.bench-head h2 { margin: .4rem 0; }
.bench-head p { margin: .2rem 0; }
#bench-told:empty, #start-problem:empty, #kept-problem:empty { display: none; }
#bench-limit { position: sticky; top: 0; z-index: 1; border: 2px solid var(--ink); background: var(--paper); padding: .3rem 1rem; margin: .6rem 0; font-variant-numeric: tabular-nums; }
#bench-limit strong { font-size: 1.6rem; }
#bench-others p { margin: .2rem 0; }
#bench-advice p { margin: .3rem 0; }
.bench-body { display: grid; grid-template-columns: minmax(0, 1fr); gap: 0 1.5rem; }
@media (min-width: 60rem) { .bench-body { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); } .bench-body > :first-child { position: sticky; top: 5rem; align-self: start; } }
#bench-plot figure { margin: .5rem 0; }
#bench-plot svg { width: 100%; height: auto; }
.bench-rows { width: 100%; table-layout: fixed; }
.bench-rows th:first-child { width: 6rem; white-space: normal; }
.bench-rows th[scope="row"] { text-align: right; vertical-align: middle; font-size: 1.3rem; }
.bench-rows td small { display: block; }
.cells { display: flex; flex-wrap: wrap; gap: .3rem .8rem; }
.cell { display: inline-flex; flex-direction: column; }
.cell label { font-size: .85rem; }
.bench-rows input, .cell input, .cell select {
  font: inherit; min-height: 3.5rem; width: 6.2rem; padding: .2rem .6rem; font-variant-numeric: tabular-nums;
  color: var(--ink); background: var(--paper); border: 1px solid var(--touch); border-radius: 0;
}
.cell select { width: auto; max-width: 100%; }
.bench-rows input { font-size: 1.2rem; scroll-margin: 7rem; }
input[aria-invalid="true"] { border: 3px double var(--ink); }
.remark { margin: .2rem 0 0; font-size: .9rem; }
.remark:empty { display: none; }
#bench-add, #bench-event { display: flex; flex-wrap: wrap; gap: .6rem 1rem; align-items: end; padding: .6rem 1rem; margin: .6rem 0; }
.facts-form { display: flex; flex-wrap: wrap; gap: .4rem 1.2rem; }
.facts-form small { display: block; }
#bench summary { min-height: 2.75rem; display: flex; align-items: center; cursor: pointer; color: var(--touch); }
#bench summary::before { content: "+"; display: inline-block; width: 1.4rem; font-weight: bold; }
#bench details[open] > summary::before { content: "\\2212"; }
#bench button, #bench .chosen a, #bench figcaption a, #bench #bench-known a {
  font: inherit; min-height: 2.75rem; min-width: 2.75rem; padding: .2rem .6rem; display: inline-flex; align-items: center; justify-content: center;
}
#bench button { color: var(--touch); background: var(--paper); border: 1px solid var(--touch); border-radius: 0; }
#bench input[type="file"] { min-height: 2.75rem; max-width: 100%; }
#bench-files[inert] { opacity: .5; }
.files, .findings, .kept { list-style: none; padding: 0; }
.files li, .findings li, .kept li { margin: .4rem 0; padding-left: .8rem; border-left: 3px solid var(--line); overflow-wrap: anywhere; }
.findings .error { border-left: 6px double var(--ink); }
.findings .warning { border-left: 4px solid var(--ink); }
`;
