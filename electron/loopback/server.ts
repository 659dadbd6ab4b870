import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { Handlers } from '../../core/contract/requests.ts'
import { present } from '../../core/lists/lists.ts'
import { fail, type Outcome, type ProblemKind, succeed } from '../../core/project/problem.ts'
import { answerRequest, isRequestName } from '../handlers/answer.ts'
import { readPage } from '../pages/pages.ts'
import type { Handover } from './handover.ts'
import { type RequestRefusal, refuseCaller, refuseForeigner, refuseOther } from './request-guard.ts'

interface LoopbackParts {
  readonly handlers: Handlers
  /** Folder of the built pages. */
  readonly pages: string
  readonly token: string
  readonly handover: Handover
  /** 0 takes any free port. */
  readonly port: number
}

export interface LoopbackServer {
  readonly port: number
  /** A fresh address that opens the program once: its code is in the fragment, which a browser never sends. */
  readonly newAddress: (onUsed?: () => void) => string
  readonly close: () => Promise<void>
}

/** The largest body taken, in bytes; a job file of a hundred rooms is well under one million. */
const largestBody = 64_000_000

/** The largest body in which a code is handed in, in bytes. */
const longestCode = 1000

const spentCode =
  'This address was used before; each opens the program once. The window in which npm start runs shows a fresh one.'

/** Serves the built pages and the request map to this machine only. */
export async function startServer(parts: LoopbackParts): Promise<LoopbackServer> {
  const server = createServer((request, response) => {
    serve(parts, portOf(server), request, response).catch(() => response.destroy())
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(parts.port, '127.0.0.1', resolve)
  })
  const port = portOf(server)
  return {
    port,
    newAddress: (onUsed = () => {}) => `http://127.0.0.1:${port}/#code=${parts.handover.newCode(onUsed)}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

function portOf(server: Server): number {
  const address = server.address()
  return typeof address === 'object' ? present(address).port : 0
}

async function serve(
  parts: LoopbackParts,
  port: number,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const foreigner = refuseForeigner(request, port)
  if (foreigner !== null) return refuse(response, foreigner)
  const { pathname } = new URL(request.url ?? '/', `http://127.0.0.1:${port}`)
  if (pathname === '/enter') return letIn(parts.handover, request, response)
  if (pathname.startsWith('/ask/'))
    return serveRequest(parts, pathname.slice('/ask/'.length), request, response)
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return refuse(response, { status: 405, sentence: 'Pages are asked for with GET.' })
  }
  const page = await readPage(parts.pages, pathname)
  if (page === null) {
    return sendJson(response, 404, fail('notFound', 'There is no such page.'))
  }
  response.writeHead(200, page.headers).end(page.body)
}

/** Exchanges a code for the token. */
async function letIn(handover: Handover, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const other = refuseOther(request)
  if (other !== null) return refuse(response, other)
  const body = await readBody(request, longestCode)
  const asked = body === null ? undefined : parseJson(body)
  const code = typeof asked === 'object' && asked !== null && 'code' in asked ? asked.code : undefined
  const token = typeof code === 'string' ? handover.exchange(code) : null
  if (token === null) return refuse(response, { status: 401, sentence: spentCode })
  sendJson(response, 200, succeed({ token }))
}

async function serveRequest(
  parts: LoopbackParts,
  name: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const caller = refuseCaller(request, parts.token)
  if (caller !== null) return refuse(response, caller)
  if (!isRequestName(name)) {
    return sendJson(response, 404, fail('notAllowed', 'The host knows no such request.'))
  }
  const body = await readBody(request, largestBody)
  if (body === null) return sendJson(response, 413, fail('notValid', 'The request is too large.'))
  const argument = parseJson(body)
  if (argument === undefined) {
    return sendJson(response, 400, fail('notValid', 'The request is not JSON.'))
  }
  sendJson(response, 200, await answerRequest(parts.handlers, name, argument))
}

/** The whole body, or null where it is larger than `most` bytes; one that says so beforehand is not even read. */
async function readBody(request: IncomingMessage, most: number): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > most) return null
  const chunks: Buffer[] = []
  let length = 0
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length
    if (length > most) return null
    chunks.push(chunk)
  }
  return Buffer.concat(chunks).toString('utf8')
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function refuse(response: ServerResponse, refusal: RequestRefusal): void {
  const kind: ProblemKind = 'notAllowed'
  sendJson(response, refusal.status, fail(kind, refusal.sentence))
}

function sendJson(response: ServerResponse, status: number, outcome: Outcome<unknown>): void {
  response
    .writeHead(status, {
      'Content-Type': 'application/json; charset=utf-8',
      'Cache-Control': 'no-store',
      'X-Content-Type-Options': 'nosniff',
    })
    .end(JSON.stringify(outcome))
}
