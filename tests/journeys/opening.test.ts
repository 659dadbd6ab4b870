import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect } from 'vitest'
import { writeForwardingPage } from '../../electron/loopback/handover.ts'
import { granted } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { browserJourney } from './hosts.ts'

browserJourney(
  'the private page opens the program, and nothing in the address is worth keeping',
  async (program) => {
    const { saveFolder } = program
    const newTab = async () => {
      const browser = program.page.context().browser()
      if (browser === null) throw new Error('The page has no browser')
      return browser.newPage()
    }
    const forwarding = join(saveFolder, 'open.html')
    writeForwardingPage(forwarding, await program.nextAddress())
    const tab = await newTab()
    await tab.goto(pathToFileURL(forwarding).href)
    await tab.waitForSelector('.sheet')
    expect(granted(await askFrom(tab, 'hostFacts', {})).host).toBe('loopback')
    expect(new URL(tab.url()).hash).toBe('')
    const token = await tab.evaluate(() => sessionStorage.getItem('coatwright-token'))
    const seen = await tab.evaluate(() => [location.href, document.referrer, JSON.stringify(history.state)])
    expect(seen.filter((text) => text.includes(token ?? ''))).toEqual([])
    // A reload keeps the tab open; the same page in another tab is told where a fresh address is.
    await tab.reload()
    expect(granted(await askFrom(tab, 'hostFacts', {})).host).toBe('loopback')
    const late = await newTab()
    await late.goto(pathToFileURL(forwarding).href)
    await late.getByText('This address was used before').waitFor()
  },
)
