import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const root = join(import.meta.dirname, '..', '..')
const rows = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8')
  .split('\n')
  .flatMap((line) => {
    const [, number, recommendation, answer] = /^\| (\d+)\. (.*?) \| (.*) \|$/.exec(line) ?? []
    return number === undefined ? [] : [{ number: Number(number), recommendation, answer: answer ?? '' }]
  })

const folder = join(root, 'electron')
const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
  /\.(?:ts|mjs)$/.test(name),
)
const sources = names.map((name) => readFileSync(join(folder, name), 'utf8')).join('\n')

test('Electron’s checklist is answered in full, item by item', () => {
  expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: 20 }, (_, index) => index + 1))
})

test('every file and every name the answers give is there', () => {
  const given = rows.flatMap(({ answer }) =>
    [...answer.matchAll(/`([^`]+)`/g)].map(([, words]) => words ?? ''),
  )
  const files = given.filter((words) => /\.(?:ts|mjs)$/.test(words))
  expect(files.length).toBeGreaterThan(10)
  expect(files.filter((file) => !names.some((name) => `electron/${name}`.endsWith(file)))).toEqual([])
  const codeNames = given.filter(
    (words) => /^[a-zA-Z]\w*(?:: \w+)?$/.test(words) && words !== 'experimentalFeatures',
  )
  expect(codeNames.length).toBeGreaterThan(10)
  expect(codeNames.filter((name) => !sources.includes(name))).toEqual([])
})

test('what the answers say is never set or called, is not', () => {
  const never = ['webSecurity', 'allowRunningInsecureContent', 'experimentalFeatures', 'enableBlinkFeatures']
  const found = [...never, 'openExternal', 'webviewTag', 'nodeIntegrationInWorker', 'file://'].filter(
    (name) => sources.includes(name),
  )
  expect(found).toEqual([])
  expect(rows.filter(({ answer }) => /\bnever\b/.test(answer)).map(({ number }) => number)).toEqual([
    6, 8, 9, 10, 15,
  ])
})

test('every window is made with Node out, the page apart and in a sandbox', () => {
  const windows = [...sources.matchAll(/new BrowserWindow\(\{[\s\S]*?\n {2,4}\}\)/g)].map(([words]) => words)
  expect(windows).toHaveLength(2)
  for (const words of windows) {
    for (const wanted of ['sandbox: true', 'contextIsolation: true', 'nodeIntegration: false']) {
      expect(words).toContain(wanted)
    }
  }
})
