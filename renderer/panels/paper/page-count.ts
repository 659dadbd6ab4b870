import { type Paper, printable } from '../../../core/work-order/paper-size.ts'

const cssPixelsPerMillimetre = 96 / 25.4

/** A rounding of the screen is no page more. */
const slack = 2

export interface PageCount {
  readonly pages: number
  /** A document that runs over several pages may take one more where a table row does not fit the rest of one. */
  readonly isExact: boolean
}

/** Sheets of paper that documents as high as these take, each from a page of its own. Heights in CSS pixels without margins. */
export function pagesOf(heights: readonly number[], paper: Paper): PageCount {
  const each = heights.map((height) =>
    Math.max(1, Math.ceil((height - slack) / (printable(paper).height * cssPixelsPerMillimetre))),
  )
  return { pages: each.reduce((sum, count) => sum + count, 0), isExact: each.every((count) => count === 1) }
}

/** Heights of the documents shown in a preview, which has them as wide as they are printed. */
export function heightsIn(shown: Document): readonly number[] {
  return [...shown.querySelectorAll<HTMLElement>('.sheet')].map((sheet) => {
    const style = getComputedStyle(sheet)
    return sheet.clientHeight - Number.parseFloat(style.paddingTop) - Number.parseFloat(style.paddingBottom)
  })
}

/** How much paper it is, in words. */
export function countWords(count: PageCount | null): string {
  if (count === null) return 'Sheets are being counted.'
  if (count.pages === 0) return 'Nothing is chosen.'
  return `${count.isExact ? '' : 'About '}${count.pages} ${count.pages === 1 ? 'sheet' : 'sheets'} of paper`
}
