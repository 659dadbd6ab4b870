export type Paper = 'letter' | 'a4'

/** Around what is printed; running heads and page numbers stand in them. Millimeters. */
export const pageMargin = { top: 10, side: 10, bottom: 10 } as const

const sheets: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
}

/** What is left of a sheet between its margins, in millimeters. */
export function printable(paper: Paper): { readonly width: number; readonly height: number } {
  const { width, height } = sheets[paper]
  return {
    width: width - 2 * pageMargin.side,
    height: height - pageMargin.top - pageMargin.bottom,
  }
}
