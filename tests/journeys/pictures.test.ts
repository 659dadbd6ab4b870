import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { test } from 'vitest'
import { browserJourney } from './hosts.ts'
import { houseViews, walkViews } from './views.ts'

/** Where pictures of all views go; none are made where nobody names a folder, for they take some minutes. */
const folder = process.env.COATWRIGHT_PICTURES

const looks = [
  { name: '1024', width: 1024, height: 768 },
  { name: '1366', width: 1366, height: 768 },
  { name: '1920', width: 1920, height: 1080 },
  { name: '200-percent', width: 683, height: 384 },
  { name: 'dark', width: 1366, height: 768, colorScheme: 'dark' },
  { name: 'forced-colors', width: 1366, height: 768, forcedColors: 'active' },
] as const

for (const { name, width, height, ...media } of folder === undefined ? [] : looks) {
  browserJourney(`pictures of every view: ${name}`, async ({ page }) => {
    const place = join(folder ?? '', name)
    mkdirSync(place, { recursive: true })
    await page.setViewportSize({ width, height })
    await page.emulateMedia({ reducedMotion: 'reduce', ...media })
    await walkViews(page, houseViews, async (view) => {
      await page.screenshot({ path: join(place, `${view.replace(/\W+/g, '-')}.png`), fullPage: width < 800 })
    })
  })
}
if (folder === undefined) test.skip('pictures of every view: name a folder in COATWRIGHT_PICTURES', () => {})
