import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { documentParts, workOrderHtml } from '../../core/work-order/html.ts'
import { type Paper, printable } from '../../core/work-order/paper-size.ts'
import { planSize } from '../../core/work-order/plan-drawing.ts'
import { blankPage } from '../journeys/blank-page.ts'
import { sampleOrder } from '../work-order/sample-order.ts'

const pageFor = await blankPage()
const order = sampleOrder()
/** Paper in points, and what is left of it between its margins in CSS pixels. */
const pixels = (paper: Paper) => Math.floor((printable(paper).width / 25.4) * 96)
const papers = {
  letter: { width: 612, height: 792, printable: pixels('letter') },
  a4: { width: 595, height: 842, printable: pixels('a4') },
} as const satisfies Record<Paper, object>

function printed(name: string, check: (page: Page) => Promise<void>): void {
  test(name, async (context) => {
    await check(pageFor(context))
  })
}

async function show(on: Page, paper: Paper): Promise<void> {
  await on.emulateMedia({ media: 'print' })
  await on.setViewportSize({ width: papers[paper].printable, height: 900 })
  await on.setContent(workOrderHtml(order, paper, documentParts))
}

for (const paper of ['letter', 'a4'] as const) {
  printed(`nothing is wider than the printable width of ${paper}, and no drawing is squeezed`, async (on) => {
    await show(on, paper)
    const wide = await on.evaluate(() => {
      const limit = document.documentElement.clientWidth + 0.5
      const spills = [...document.querySelectorAll('body *')].filter((each) => {
        const box = each.getBoundingClientRect()
        const drawing = each.closest('svg')?.getBoundingClientRect()
        if (drawing !== undefined) return box.left < drawing.left - 0.5 || box.right > drawing.right + 0.5
        const clipped = each.clientWidth > 0 && each.scrollWidth > each.clientWidth + 1
        return box.right > limit || box.left < -0.5 || clipped
      })
      return spills.map((each) => `${each.tagName} ${each.textContent?.slice(0, 40)}`)
    })
    expect(wide).toEqual([])
    const drawing = await on
      .locator('svg.plan')
      .first()
      .evaluate((svg) => ({
        shown: svg.getBoundingClientRect().width,
        asked: (Number.parseFloat(svg.getAttribute('width') ?? '') / 25.4) * 96,
      }))
    expect(drawing.shown).toBeCloseTo(drawing.asked, 0)
  })

  printed(
    `the ${paper} document prints on ${paper}, each room, week and list from a new page`,
    async (on) => {
      await show(on, paper)
      const pdf = (await on.pdf({ preferCSSPageSize: true, tagged: true })).toString('latin1')
      const boxes = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)]
      expect(boxes.length).toBeGreaterThanOrEqual(order.rooms.length + order.weeks.length + 4)
      for (const [, width, height] of boxes) {
        expect(Math.round(Number(width))).toBe(papers[paper].width)
        expect(Math.round(Number(height))).toBe(papers[paper].height)
      }
      expect(pdf).toContain('/StructTreeRoot')
    },
  )
}

printed('heads of tables repeat and rows stay whole', async (on) => {
  await show(on, 'letter')
  const styles = await on.evaluate(() => ({
    heads: [...document.querySelectorAll('thead')].map((each) => getComputedStyle(each).display),
    rows: [...document.querySelectorAll('tr')].map((each) => getComputedStyle(each).breakInside),
  }))
  expect(new Set(styles.heads)).toEqual(new Set(['table-header-group']))
  expect(new Set(styles.rows)).toEqual(new Set(['avoid']))
})

printed('ink is black, white or grey: nothing is said by colour', async (on) => {
  await show(on, 'letter')
  const colours = await on.evaluate(() => {
    const names = ['color', 'backgroundColor', 'borderTopColor', 'fill', 'stroke'] as const
    return [...document.querySelectorAll('body, body *')].flatMap((each) => {
      const style = getComputedStyle(each)
      return names.map((name) => style[name])
    })
  })
  for (const colour of new Set(colours)) {
    const parts = [...colour.matchAll(/[\d.]+/g)].slice(0, 3).map((match) => Number(match[0]))
    if (parts.length === 3) expect(Math.max(...parts) - Math.min(...parts)).toBeLessThanOrEqual(12)
  }
})

test('the rooms of a set are drawn at one scale, as large as the place allows', () => {
  const plan = order.rooms[0]?.plans[0]
  if (plan === undefined) throw new RangeError('no plan')
  // 12 ft x 10 ft, with 7.5 mm around it, on at most 66 x 42 mm: the 3048 mm of depth get 27 mm.
  const one = planSize([plan], 66, 42)
  expect(one.height).toBeCloseTo(42, 6)
  expect(one.scale).toBeCloseTo(3048 / 27, 6)
  // Two of them side by side, 3 mm apart: 2 x 3657.6 mm of width get 66 - 4 x 7.5 - 3 mm.
  expect(planSize([plan, plan], 66, 200).scale).toBeCloseTo((2 * 3657.6) / 33, 6)
})
