import { closely } from './fit.ts'
import { paperWords, type Paper } from './paper.ts'

/**
 * The style sheet of the sheet as a file: read on a screen, printed on a paper.
 *
 * @param size of the letters of its one page on paper, pt
 */
export function sheetStyle(paper: Paper, size: number): string {
  const { side, top, bottom, columns, gap, leading } = closely
  return `@page { size: ${paperWords[paper]}; margin: 15mm 14mm 16mm; }
@page :first { margin: ${top}pt ${side}pt ${bottom}pt; }
body { max-width: 52rem; margin: 0 auto; padding: 1.5rem; color: #15191d; background: #fff;
  font: 15px/1.4 'Source Sans 3', system-ui, sans-serif; font-variant-numeric: tabular-nums; }
h1 { margin: 0; font-size: 1.6rem; }
h2 { margin: 1.6rem 0 .4rem; font-size: 1.15rem; border-bottom: 1px solid #15191d; }
h3 { margin: .9rem 0 .2rem; font-size: 1rem; }
p, ul, table, figure, pre { margin: .3rem 0; }
ul { padding-left: 1.2em; }
.quiet, footer { color: #566069; }
.answer { font-size: 1.25rem; font-weight: 600; }
.caution { padding: .2rem .6rem; border-left: 3px solid #8a5500; }
table { width: 100%; border-collapse: collapse; font-size: .92rem; }
th, td { padding: .1rem .5rem .1rem 0; text-align: left; vertical-align: baseline; border-bottom: 1px solid #cdd2d5; overflow-wrap: anywhere; }
th { color: #566069; font-weight: 400; }
th.end, td.end { text-align: right; overflow-wrap: normal; white-space: nowrap; }
tr.over { color: #b3241a; font-weight: 600; }
tr.near { color: #8a5500; }
svg { display: block; max-width: 100%; height: auto; }
figcaption { font-size: .86rem; color: #566069; }
.scenes { display: grid; grid-template-columns: repeat(auto-fit, minmax(20rem, 1fr)); gap: .8rem 1.4rem; }
pre { padding: .3rem 0; white-space: pre-wrap; overflow-wrap: anywhere; font-size: .8rem; border-bottom: 1px solid #cdd2d5; }
footer { margin-top: 1.6rem; border-top: 1px solid #cdd2d5; }
.page { columns: 22rem 3; column-gap: 1.6rem; font-size: .9rem; }
.page h2 { break-after: avoid; }
.page :is(th, td) { overflow-wrap: normal; }
body:has(.page) { max-width: 82rem; }
@media print {
  body { max-width: none; padding: 0; font-size: 9.5pt; }
  .scenes { grid-template-columns: 1fr 1fr; }
  h2, h3, figcaption { break-after: avoid; }
  tr, figure, li, .caution { break-inside: avoid; }
  thead { display: table-header-group; }
  body:has(.page) { font-size: ${size}pt; line-height: ${leading}; }
  .page { columns: ${columns}; column-gap: ${gap}pt; font-size: 1em; }
  :is(.answer-page, .page) :is(p, ul, table, figure) { margin: .1em 0; }
  :is(.answer-page, .page) :is(h2, h3) { margin: .5em 0 .1em; font-size: 1em; }
  :is(.answer-page, .page) h2 { font-size: 1.15em; }
  .answer-page h2 { display: none; }
  .answer-page .answer { font-size: 1.5em; }
  .page table { font-size: 1em; }
  .page :is(th, td) { padding: 0 3pt 0 0; }
  .page figcaption { font-size: 1em; }
  .page .wide { display: block; }
  body:has(.page) :is(h1) { font-size: 2em; line-height: 1.1; }
  body:has(.page) footer { margin-top: .4em; }
}
`
}
