import { expect } from 'vitest'
import { journey } from './hosts.ts'

journey('opens its window on the program’s own page, which hears from its host', async ({ page, host }) => {
  expect(await page.title()).toContain('Coatwright')
  const facts = await page.evaluate(async () => {
    if ('coatwright' in window) {
      const desktop = window.coatwright as { ask: (name: string, argument: object) => Promise<unknown> }
      return desktop.ask('hostFacts', {})
    }
    const token =
      new URLSearchParams(location.hash.slice(1)).get('token') ?? sessionStorage.getItem('coatwright-token')
    const answer = await fetch('/ask/hostFacts', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Authorization: `Bearer ${token}` },
      body: '{}',
    })
    return answer.json()
  })
  expect(facts).toMatchObject({ ok: true, value: { host: host === 'browser' ? 'loopback' : 'desktop' } })
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
