import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, type TestContext } from 'vitest'
import { findChromium } from './chromium.ts'

/**
 * A page of a browser for all tests of a file, opened before them and closed after. What comes back gives it to a test, or skips the test with
 * the reason where there is no browser.
 */
export async function blankPage(
  options: BrowserContextOptions = {},
): Promise<(context: TestContext) => Page> {
  const found = await findChromium()
  let browser: Browser | undefined
  let page: Page | undefined
  beforeAll(async () => {
    if (typeof found === 'string') return
    browser = await chromium.launch({
      executablePath: found.executablePath,
      env: { ...process.env, ...found.environment },
      args: ['--no-sandbox'],
    })
    page = await browser.newPage(options)
  })
  afterAll(() => browser?.close())
  return (context) => page ?? context.skip(`no Chromium here: ${String(found)}`)
}
