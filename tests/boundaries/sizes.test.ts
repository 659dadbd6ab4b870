import { expect, test } from 'vitest'
import { type Reading, readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

const mostLinesOfFile = 300
const mostLinesOfFunction = 60
const mostLinesOfComponent = 100

const oneCaseEach = 'one short case for each kind, which the compiler asks for'
const oneState = 'the state of one thing, with short functions that change it'

/** Files and functions that are longer, and why. */
const kept: Readonly<Record<string, string>> = {
  'core/specification/shop-products.ts': 'a table of products',
  'core/sketch/apply-command.ts changeJob': oneCaseEach,
  'core/schedule/tries/annealing.ts createAnnealing': oneState,
  'core/schedule/tries/search.ts createSearch': oneState,
  'renderer/state/job-store.ts createJobStore': oneState,
  'renderer/panels/calendar/move-words.ts sentenceOf': oneCaseEach,
}

/** Everything longer than it may be: `path` for a file, `path name` for a function. */
function tooLong({ path, lines, functions }: Reading): readonly string[] {
  const isComponent = (name: string) => path.endsWith('.tsx') && /^[A-Z]/.test(name)
  return [
    ...(lines > mostLinesOfFile ? [path] : []),
    ...functions
      .filter((each) => each.lines > (isComponent(each.name) ? mostLinesOfComponent : mostLinesOfFunction))
      .map(({ name }) => `${path} ${name}`),
  ]
}

test('files and functions are short, but for those with a reason', () => {
  const long = readSources(['core', 'renderer', 'electron'].flatMap(sourcesOf)).flatMap(tooLong)
  expect(long.sort()).toEqual(Object.keys(kept).sort())
})

test('every function with a body is measured, in whole lines and by its name', () => {
  const lines = (count: number) => '\n'.repeat(count)
  const read = (path: string, text: string) => readSources([{ path, text }]).flatMap(tooLong)
  const long = `function outer() {${lines(60)}}\nconst arrow = () => {${lines(60)}}\nconst short = () => {${lines(59)}}`
  expect(read('core/a.ts', long)).toEqual(['core/a.ts outer', 'core/a.ts arrow'])
  const component = `export const Page = memo(function Page() {${lines(100)}})\nfunction Part() {${lines(99)}}`
  expect(read('renderer/a.tsx', component)).toEqual(['renderer/a.tsx Page'])
  const method = `class A {\n  go() {${lines(60)}}\n}\nlist.map((each) => {${lines(60)}})`
  expect(read('core/b.ts', method)).toEqual(['core/b.ts go', 'core/b.ts '])
  expect(read('core/c.ts', `a${lines(300)}b`)).toEqual(['core/c.ts'])
})
