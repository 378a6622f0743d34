/** Style sheet of the card: what one types in stands out, and in print it is the first page. */
export const cardStyle = `
.card { border: 2px solid var(--ink); padding: .8rem 1rem; margin-bottom: 2rem; }
.card.unreal {
  border-left: 8px solid transparent;
  border-image: repeating-linear-gradient(45deg, var(--ink) 0 2px, var(--paper) 2px 6px) 8;
  border-width: 8px; padding: .6rem .8rem;
}
.card h1 { margin: 0; }
.card h1.long { font-size: 1.15rem; }
.ground { margin: 0 0 .4rem; }
.origin { border-top: 2px solid var(--ink); border-bottom: 2px solid var(--ink); padding: .15rem 0; }
.origin strong { text-transform: uppercase; letter-spacing: .04em; margin-right: .6em; }
.settings { display: flex; flex-wrap: wrap; gap: .5rem 2rem; margin: .6rem 0; }
.settings .quiet { display: block; max-width: 15rem; }
.besides { display: flex; flex-wrap: wrap; gap: .3rem 2rem; margin: .5rem 0; }
.card dt { font-size: .8rem; }
.settings dt { text-transform: uppercase; letter-spacing: .04em; }
.card dd { margin: 0; font-variant-numeric: tabular-nums; }
.settings strong { display: block; font-size: 1.35rem; line-height: 1.2; white-space: nowrap; }
.settings div:nth-child(-n+3) strong { font-size: 1.8rem; }
.card .quiet { font-size: .8rem; }
.typed td, .typed tbody th { vertical-align: middle; }
.typed td, .typed th { padding: .15rem .5rem; border-bottom: 1px solid var(--line); }
.typed { min-width: 38rem; }
.typed tbody th { font-weight: normal; white-space: nowrap; position: sticky; left: 0; background: var(--paper); }
.typed strong { font-size: 1.35rem; line-height: 1.15; }
.typed thead th.number { white-space: nowrap; }
.typed .unit { display: block; }
.typed td:last-child { width: 40%; font-size: .9em; line-height: 1.25; }
.marks { font-size: .85rem; margin: 0; }
.notes { list-style: none; padding: 0; font-size: .9rem; }
.notes li { overflow-wrap: anywhere; }
.dangers, .versions { font-size: .8rem; margin: .3rem 0; overflow-wrap: anywhere; }
.versions { text-align: right; }
@media print {
  .card { break-after: page; break-inside: avoid; margin: 0; padding: 3mm 4mm; line-height: 1.3; }
  .card.unreal { print-color-adjust: exact; -webkit-print-color-adjust: exact; padding: 2mm 3mm; }
  .card h1 { font-size: 18pt; }
  .card h1.long { font-size: 9.5pt; }
  .ground { margin: 0 0 1mm; font-size: 9pt; }
  .origin { font-size: 9pt; margin: 0; }
  .settings { display: grid; grid-template-columns: 1fr 1fr 1.5fr; gap: 1.5mm 4mm; margin: 2mm 0; }
  .settings .quiet { max-width: none; }
  .settings strong { font-size: 15pt; }
  .settings div:nth-child(-n+3) strong { font-size: 22pt; }
  .typed { min-width: 0; font-size: 9.5pt; }
  .typed caption { padding: 0; }
  .typed td, .typed th { padding: .3mm 1.2mm; }
  .typed th { font-size: 8.5pt; }
  .typed tbody th { font-size: 10pt; position: static; background: none; }
  .typed strong { font-size: 16pt; }
  .typed td:last-child { font-size: 8pt; }
  .card .quiet, .card dt, .marks, .dangers, .versions { font-size: 8pt; }
  .dangers, .versions { margin: 1mm 0 0; }
  .notes { font-size: 9pt; margin: 1mm 0; }
  .card:not(.roomy) .notes li { white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
  .besides { font-size: 10pt; gap: 1mm 6mm; margin: 1.5mm 0; }
  .roomy .settings strong { font-size: 17pt; }
  .roomy .settings div:nth-child(-n+3) strong { font-size: 27pt; }
  .roomy .settings { gap: 2.5mm 4mm; margin: 3mm 0; }
  .roomy .typed strong { font-size: 19pt; }
  .roomy .typed td, .roomy .typed th { padding: .6mm 1.2mm; }
  .roomy .typed strong { margin-left: 2mm; }
  .roomy .besides { font-size: 11pt; margin: 2.5mm 0; }
  .roomy .notes { font-size: 9.5pt; }
  .roomy .notes li { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow: hidden; }
}
`;
