import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults, RunOnly } from 'axe-core'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { firstJourney } from './hosts.ts'
import { emptyViews, houseViews, walkViews } from './views.ts'

const checker = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
/** All success criteria of WCAG 2.2, levels A and AA, that a machine can check, and what the checker calls best practice. */
const all: RunOnly = {
  type: 'tag',
  values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
}
/** What another scheme changes. */
const contrast: RunOnly = { type: 'rule', values: ['color-contrast'] }
/** Lines of a long list after its first ones, which are of the same make. */
const repeated = ['tr:nth-child(n+9)', 'li:nth-child(n+9)', '.rule:nth-child(n+9)']

firstJourney('every station, tab and dialog keeps the rules of accessibility', async ({ page }) => {
  // Every other view is looked at in the dark scheme first, so that each view takes one change of it.
  let colorScheme: 'light' | 'dark' = 'light'
  await page.emulateMedia({ reducedMotion: 'reduce', colorScheme })
  page.setDefaultTimeout(8000)
  const findings: string[] = []
  let looked = 0
  const look = async (view: string) => {
    looked++
    const check = async (runOnly: RunOnly) =>
      findings.push(...(await findingsOn(page, runOnly)).map((each) => `${view}, ${colorScheme}: ${each}`))
    await check(all)
    colorScheme = colorScheme === 'light' ? 'dark' : 'light'
    await page.emulateMedia({ colorScheme })
    await check(contrast)
  }
  await walkViews(page, emptyViews, look)
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByRole('button', { name: 'Open a fresh demonstration house' }).click()
  await walkViews(page, houseViews, look)
  expect(findings).toEqual([])
  expect(looked).toBeGreaterThan(60)
})

/** Each as rule, element, and what is wrong with it. */
async function findingsOn(page: Page, runOnly: RunOnly): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(checker)
  const { violations } = await page.evaluate<AxeResults, { runOnly: RunOnly; exclude: readonly string[] }>(
    ({ runOnly, exclude }) =>
      (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(
        { exclude: [...exclude] },
        { runOnly, resultTypes: ['violations'] },
      ),
    { runOnly, exclude: runOnly === contrast ? repeated : [] },
  )
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, html }) => `${id}: ${target.join(' ')} ${html.slice(0, 160)}`),
  )
}
