import type { PagedDocument } from '../../core/work-order/html.ts'

/** Pages made before anything is shown: what a window has room for. */
const madeAtOnce = 2
const marker = 'data-page'

/** The text of a document with its first pages, and an empty page of about the right height for each of the others. */
export function withPlaceholders({ opening, pages, closing }: PagedDocument): string {
  const shown = pages.map((page, index) =>
    index < madeAtOnce
      ? page()
      : `<section class="sheet" ${marker}="${index}" style="height: 279mm"></section>`,
  )
  return opening + shown.join('') + closing
}

export function isFilled(shown: Document): boolean {
  return shown.querySelector(`[${marker}]`) === null
}

/** Makes the empty pages that are nearest to what is looked at, at least one, and no more after so many milliseconds: pages are laid out once for all of them. */
export function fillNearest(shown: Document, paper: PagedDocument, milliseconds: number): void {
  const end = performance.now() + milliseconds
  const height = shown.defaultView?.innerHeight ?? 0
  const empty = [...shown.querySelectorAll<HTMLElement>(`[${marker}]`)].map((page) => {
    const { top, bottom } = page.getBoundingClientRect()
    return { page, away: top > height ? top - height : bottom < 0 ? -bottom : 0 }
  })
  for (const { page } of empty.toSorted((one, other) => one.away - other.away)) {
    fill(page, paper)
    if (performance.now() >= end) return
  }
}

export function fillAll(shown: Document, paper: PagedDocument): void {
  for (const page of shown.querySelectorAll<HTMLElement>(`[${marker}]`)) fill(page, paper)
}

function fill(page: HTMLElement, paper: PagedDocument): void {
  const make = paper.pages[Number(page.getAttribute(marker))]
  if (make !== undefined) page.outerHTML = make()
}
