import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { granted, problemOf } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { journey } from './hosts.ts'

journey('opens its window on the program’s own page, which hears from its host', async ({ page, host }) => {
  expect(await page.title()).toContain('Coatwright')
  const facts = granted(await askFrom(page, 'hostFacts', {}))
  expect(facts).toMatchObject({
    host: host === 'browser' ? 'loopback' : 'desktop',
    writesPdf: host === 'desktop',
  })
})

journey('what the tests walk through is the program in its fast form', async () => {
  const assets = join(import.meta.dirname, '..', '..', 'build', 'renderer', 'assets')
  const scripts = readdirSync(assets).filter((name) => name.endsWith('.js'))
  expect(scripts.length).toBeGreaterThan(1)
  for (const name of scripts) expect(readFileSync(join(assets, name), 'utf8').includes('jsxDEV')).toBe(false)
})

journey(
  'the page sees neither Node nor anything of the desktop shell but one function',
  async ({ page, host }) => {
    const seen = await page.evaluate(() => ({
      node: ['process', 'require', 'module', 'Buffer', '__dirname'].filter((name) => name in window),
      shell: Object.keys((window as unknown as { coatwright?: object }).coatwright ?? {}),
    }))
    expect(seen).toEqual({ node: [], shell: host === 'desktop' ? ['ask'] : [] })
  },
)

journey('the page cannot run code made from text, nor load from elsewhere', async ({ page }) => {
  const tried = await page.evaluate(async () => {
    // In a task of its own: while a debugger evaluates something, the policy on code from text is lifted.
    const evaluated = await new Promise<boolean>((resolve) => {
      setTimeout(() => {
        try {
          resolve(new Function('return true')())
        } catch {
          resolve(false)
        }
      })
    })
    const loaded = await fetch('https://example.com/').then(
      () => true,
      () => false,
    )
    return { evaluated, loaded }
  })
  expect(tried).toEqual({ evaluated: false, loaded: false })
})

journey(
  'the first start has the demonstration house in the book, and a restart keeps the book',
  async (program) => {
    const before = granted(await askFrom(program.page, 'listJobs', {}))
    expect(before).toHaveLength(1)
    const made = granted(
      await askFrom(program.page, 'createJob', { title: 'Corner house', unitSystem: 'imperial' }),
    )
    await program.restart()
    const after = granted(await askFrom(program.page, 'listJobs', {}))
    expect(after.map((job) => job.title)).toEqual(['Corner house', before[0]?.title])
    expect(granted(await askFrom(program.page, 'openJob', { jobKey: made.jobKey }))).toEqual(made)
  },
)

journey(
  'documents are written where the host can, under a plain name in the place asked for',
  async (program) => {
    const { page, host, saveFolder } = program
    const html =
      '<!doctype html><title>A room</title><h1>Dining room</h1><script>document.title = "ran"</script>'
    const pdf = granted(
      await askFrom(page, 'savePdf', { fileName: '../../a room.pdf', html, paper: 'letter' }),
    )
    const csv = { fileName: 'list.csv', mediaType: 'text/csv', text: 'gallons,2' }
    const list = granted(await askFrom(page, 'saveDocument', csv))
    const printed = granted(await askFrom(page, 'printDocument', { html, paper: 'a4' }))
    if (host === 'browser') {
      expect([pdf.path, list.path, printed.printed]).toEqual([null, null, false])
      return
    }
    expect([pdf.path, list.path]).toEqual([join(saveFolder, 'a room.pdf'), join(saveFolder, 'list.csv')])
    expect(readFileSync(join(saveFolder, 'a room.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
    expect(readFileSync(join(saveFolder, 'list.csv'), 'utf8')).toBe('gallons,2')
    expect(printed.printed).toBe(true)
    expect(problemOf(await askFrom(page, 'savePdf', { fileName: '', html, paper: 'letter' }))).toBe(
      'notValid',
    )
  },
)
