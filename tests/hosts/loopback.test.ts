import { mkdirSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { createHandover } from '../../electron/loopback/handover.ts'
import { type LoopbackServer, startServer } from '../../electron/loopback/server.ts'
import { testFolder } from '../storage/books.ts'
import { quietHandlers } from './handler-parts.ts'

const token = 'a-token-of-this-test'

interface Answer {
  readonly status: number
  readonly headers: Readonly<Record<string, unknown>>
  readonly text: string
}

async function startTestServer(): Promise<LoopbackServer> {
  const folder = testFolder()
  const pages = join(folder, 'pages')
  mkdirSync(join(pages, 'assets'), { recursive: true })
  writeFileSync(join(pages, 'index.html'), '<title>Coatwright</title>')
  writeFileSync(join(pages, 'assets', 'main-1a2b.js'), 'export {}')
  writeFileSync(join(pages, 'notes.secret'), 'not a page')
  writeFileSync(join(folder, 'outside.html'), 'not inside')
  const server = await startServer({
    handlers: quietHandlers(),
    pages,
    token,
    handover: createHandover(token),
    port: 0,
  })
  onTestFinished(() => server.close())
  return server
}

/** By node:http, because fetch neither sends a foreign Host nor leaves `..` in a path. */
function send(
  server: LoopbackServer,
  path: string,
  options: {
    readonly method?: string
    readonly headers?: Record<string, string>
    readonly body?: string
  } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(
      {
        host: '127.0.0.1',
        port: server.port,
        path,
        method: options.method ?? 'GET',
        headers: options.headers ?? {},
      },
      (response) => {
        const chunks: Buffer[] = []
        response.on('data', (chunk: Buffer) => chunks.push(chunk))
        response.on('end', () => {
          const text = Buffer.concat(chunks).toString('utf8')
          resolve({ status: response.statusCode ?? 0, headers: response.headers, text })
        })
      },
    )
    sent.on('error', reject)
    sent.end(options.body)
  })
}

function ask(
  server: LoopbackServer,
  name: string,
  changes: Record<string, string> = {},
  body = '{}',
): Promise<Answer> {
  const headers = { 'Content-Type': 'application/json', Authorization: `Bearer ${token}`, ...changes }
  return send(server, `/ask/${name}`, { method: 'POST', headers, body })
}

test('the page of the right address hears its answer', async () => {
  const server = await startTestServer()
  const answer = await ask(server, 'listJobs', { Origin: `http://127.0.0.1:${server.port}` })
  expect(answer.status).toBe(200)
  expect(JSON.parse(answer.text)).toEqual({ ok: true, value: [] })
})

/** Hands in a code as the page does. */
function enter(server: LoopbackServer, code: unknown, changes: Record<string, string> = {}): Promise<Answer> {
  const headers = { 'Content-Type': 'application/json', ...changes }
  return send(server, '/enter', { method: 'POST', headers, body: JSON.stringify({ code }) })
}

test('an address holds a code, never the token; the code is exchanged once and dead afterwards', async () => {
  const server = await startTestServer()
  const used: string[] = []
  const addresses = ['first', 'second'].map((name) => server.newAddress(() => used.push(name)))
  for (const address of addresses) {
    expect(address).toMatch(new RegExp(`^http://127\\.0\\.0\\.1:${server.port}/#code=[\\w-]{32}$`))
    expect(address).not.toContain(token)
  }
  const [first, second] = addresses.map((address) => address.split('#code=')[1])
  expect(first).not.toBe(second)
  expect(JSON.parse((await enter(server, second)).text)).toEqual({ ok: true, value: { token } })
  expect(used).toEqual(['second'])
  const again = await enter(server, second)
  expect([again.status, again.text.includes(token)]).toEqual([401, false])
  expect(JSON.parse(again.text).problem.sentence).toContain('was used before')
  expect((await enter(server, first)).status).toBe(200)
  expect(used).toEqual(['second', 'first'])
})

test('nothing but a living code from the program’s own page is exchanged', async () => {
  const server = await startTestServer()
  const code = server.newAddress().split('#code=')[1] ?? ''
  for (const wrong of ['', code.slice(1), `${code}x`, token, null, 7, [code], 'x'.repeat(2000)]) {
    expect((await enter(server, wrong)).status).toBe(401)
  }
  expect((await enter(server, code, { Origin: 'null' })).status).toBe(403)
  expect((await enter(server, code, { Origin: 'https://example.com' })).status).toBe(403)
  expect((await enter(server, code, { Host: 'example.com' })).status).toBe(421)
  expect((await enter(server, code, { 'Content-Type': 'text/plain' })).status).toBe(415)
  expect((await send(server, `/enter?code=${code}`)).status).toBe(405)
  expect((await enter(server, code)).status).toBe(200)
})

test('a request without the token, or with another one, gets 401', async () => {
  const server = await startTestServer()
  for (const Authorization of ['', 'Bearer ', `Bearer ${token}x`, token, `Basic ${token}`]) {
    const answer = await ask(server, 'listJobs', { Authorization })
    expect([Authorization, answer.status]).toEqual([Authorization, 401])
    expect(JSON.parse(answer.text)).toMatchObject({ ok: false, problem: { kind: 'notAllowed' } })
  }
})

test('a page of another origin gets 403, even with the token', async () => {
  const server = await startTestServer()
  for (const Origin of [
    'https://example.com',
    'null',
    `http://127.0.0.1:${server.port + 1}`,
    'http://localhost',
  ]) {
    expect([Origin, (await ask(server, 'listJobs', { Origin })).status]).toEqual([Origin, 403])
    expect((await send(server, '/', { headers: { Origin } })).status).toBe(403)
  }
})

test('a name that somebody pointed at this machine gets 421', async () => {
  const server = await startTestServer()
  for (const Host of [
    'example.com',
    `example.com:${server.port}`,
    '127.0.0.1',
    `127.0.0.1:${server.port + 1}`,
  ]) {
    expect([Host, (await ask(server, 'listJobs', { Host })).status]).toEqual([Host, 421])
    expect((await send(server, '/', { headers: { Host } })).status).toBe(421)
  }
})

test('only POST of JSON is a request', async () => {
  const server = await startTestServer()
  const headers = { Authorization: `Bearer ${token}` }
  expect((await send(server, '/ask/listJobs', { headers })).status).toBe(405)
  expect((await ask(server, 'listJobs', { 'Content-Type': 'text/plain' })).status).toBe(415)
  expect((await ask(server, 'listJobs', {}, '{"unfinished"')).status).toBe(400)
  expect((await ask(server, 'dropTables')).status).toBe(404)
})

test('a body larger than any job is refused before it is read', async () => {
  const server = await startTestServer()
  const headers = {
    'Content-Type': 'application/json',
    Authorization: `Bearer ${token}`,
    'Content-Length': '64000001',
  }
  const answer = await new Promise<number>((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port: server.port, path: '/ask/importJob', method: 'POST', headers },
      (response) => {
        resolve(response.statusCode ?? 0)
        sent.destroy()
      },
    )
    sent.on('error', reject)
    sent.write('{')
  })
  expect(answer).toBe(413)
})

test('a body that says no length and goes on for ever is cut off where it is too large', async () => {
  const server = await startTestServer()
  const headers = { 'Content-Type': 'application/json', Authorization: `Bearer ${token}` }
  let written = 0
  const answer = await new Promise<number>((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port: server.port, path: '/ask/importJob', method: 'POST', headers },
      (response) => {
        resolve(response.statusCode ?? 0)
        sent.destroy()
      },
    )
    sent.on('error', reject)
    const chunk = Buffer.alloc(4_000_000, 32)
    const more = () => {
      if (written > 200_000_000 || sent.destroyed) return
      written += chunk.length
      sent.write(chunk, more)
    }
    more()
  })
  expect(answer).toBe(413)
  expect(written).toBeLessThan(100_000_000)
})

test('an argument of the wrong shape is a problem with its place', async () => {
  const server = await startTestServer()
  const answer = await ask(server, 'openJob', {}, '{"jobKey":7}')
  expect(answer.status).toBe(200)
  expect(JSON.parse(answer.text)).toMatchObject({ ok: false, problem: { kind: 'notValid', path: 'jobKey' } })
})

test('when people are on other jobs is answered over HTTP too', async () => {
  const server = await startTestServer()
  const answer = await ask(server, 'workElsewhere', {}, '{"jobKey":"job-1"}')
  expect([answer.status, JSON.parse(answer.text)]).toEqual([200, { ok: true, value: [] }])
})

test('pages need no token, carry the policy that forbids foreign code, and only assets are kept', async () => {
  const server = await startTestServer()
  const page = await send(server, '/')
  expect(page).toMatchObject({ status: 200, text: '<title>Coatwright</title>' })
  expect(page.headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'cache-control': 'no-store' })
  const policy = String(page.headers['content-security-policy'])
  expect(policy).toContain("default-src 'none'")
  expect(policy).toContain("script-src 'self';")
  expect(policy).not.toContain('unsafe-eval')
  const asset = await send(server, '/assets/main-1a2b.js')
  expect(asset.headers['content-type']).toContain('text/javascript')
  expect(String(asset.headers['cache-control'])).toContain('immutable')
})

test('nothing outside the pages is served, and nothing inside that is not a page', async () => {
  const server = await startTestServer()
  const paths = [
    '/../outside.html',
    '/..%2foutside.html',
    '/assets/../../outside.html',
    '/notes.secret',
    '/%00',
    '/%zz',
  ]
  for (const path of [...paths, '/assets', '/missing.html']) {
    expect([path, (await send(server, path)).status]).toEqual([path, 404])
  }
  expect((await send(server, '/', { method: 'DELETE' })).status).toBe(405)
})
