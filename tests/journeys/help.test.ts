import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { granted } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { browserJourney } from './hosts.ts'

const root = join(import.meta.dirname, '..', '..')

browserJourney(
  'Help is reached by F1 and from the title block, and knows this machine',
  async ({ page, host, application }) => {
    await page.setViewportSize({ width: 1366, height: 768 })
    await page.waitForSelector('.sheet canvas')
    const facts = granted(await askFrom(page, 'hostFacts', {}))
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
    await page.keyboard.press('F1')
    const help = page.getByRole('dialog', { name: 'Help' })
    await help.waitFor()
    expect(await help.textContent()).toContain(facts.bookPath)
    const runsAs = host === 'desktop' ? 'desktop program' : 'page in a browser'
    expect(await help.getByTestId('report-facts').textContent()).toMatch(
      new RegExp(`^Coatwright ${version}\\nRuns as: ${runsAs}\\n`),
    )
    await help.getByRole('button', { name: 'License' }).click()
    expect(await help.getByText('No license has been chosen yet').isVisible()).toBe(true)
    await page.keyboard.press('Escape')
    await help.waitFor({ state: 'detached' })
    await page.getByRole('contentinfo').getByRole('button', { name: 'Help' }).click()
    await help.getByRole('button', { name: 'Close' }).click()
    await help.waitFor({ state: 'detached' })
    // F1 also while something is typed.
    await page.keyboard.press('Alt+j')
    await page.getByLabel('Client').press('F1')
    await help.waitFor()
    await help.getByRole('button', { name: 'Close' }).click()
    await help.waitFor({ state: 'detached' })
    await application?.evaluate(({ BrowserWindow, Menu }) => {
      const helpMenu = Menu.getApplicationMenu()?.items.at(-1)
      helpMenu?.submenu?.items[0]?.click(undefined, BrowserWindow.getAllWindows()[0])
    })
    if (application !== null) await help.waitFor()
  },
)
