import { paperWords, type Paper } from '../../shared-engine/report/paper.ts'

/** As much of the options of a printed page as is set. */
interface PrintOptions {
  readonly pageSize: (typeof paperWords)[Paper]
  readonly preferCSSPageSize: true
  readonly printBackground: true
  readonly displayHeaderFooter: true
  readonly headerTemplate: string
  readonly footerTemplate: string
}

/** How the page becomes a PDF: the paper and the margins of its style sheet, every page numbered. */
export function printOptions(paper: Paper): PrintOptions {
  return {
    pageSize: paperWords[paper],
    preferCSSPageSize: true,
    printBackground: true,
    displayHeaderFooter: true,
    headerTemplate: '<span></span>',
    footerTemplate:
      '<span style="width: 100%; font: 7pt sans-serif; text-align: center">page <span class="pageNumber"></span> of <span class="totalPages"></span></span>',
  }
}
