/** As much of the options of a printed page as is set. */
interface PrintOptions {
  readonly pageSize: 'A4' | 'Letter'
  readonly preferCSSPageSize: true
  readonly printBackground: true
  readonly displayHeaderFooter: true
  readonly headerTemplate: string
  readonly footerTemplate: string
}

/** How the page becomes a PDF: the paper and the margins of its style sheet, every page numbered. */
export function printOptions(paper: 'a4' | 'letter'): PrintOptions {
  return {
    pageSize: paper === 'a4' ? 'A4' : 'Letter',
    preferCSSPageSize: true,
    printBackground: true,
    displayHeaderFooter: true,
    headerTemplate: '<span></span>',
    footerTemplate:
      '<span style="width: 100%; font: 7pt sans-serif; text-align: center">page <span class="pageNumber"></span> of <span class="totalPages"></span></span>',
  }
}
