import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { firstJourney } from './hosts.ts'
import { emptyViews, houseViews, walkViews } from './views.ts'

const checker = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
/** All success criteria of WCAG 2.2, levels A and AA, that a machine can check, and what the checker calls best practice. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

firstJourney('every station, tab and dialog keeps the rules of accessibility', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  page.setDefaultTimeout(8000)
  const findings: string[] = []
  let looked = 0
  const look = async (view: string) => {
    looked++
    findings.push(...(await findingsOn(page)).map((finding) => `${view}: ${finding}`))
  }
  await walkViews(page, emptyViews, look)
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByRole('button', { name: 'Open a fresh demonstration house' }).click()
  await walkViews(page, houseViews, look)
  expect(findings).toEqual([])
  expect(looked).toBeGreaterThan(60)
})

/** Each as rule, element, and what is wrong with it. */
async function findingsOn(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(checker)
  const { violations } = await page.evaluate<AxeResults, readonly string[]>(
    (values) =>
      (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(document, {
        runOnly: { type: 'tag', values: [...values] },
        resultTypes: ['violations'],
      }),
    rules,
  )
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, html }) => `${id}: ${target.join(' ')} ${html.slice(0, 160)}`),
  )
}
