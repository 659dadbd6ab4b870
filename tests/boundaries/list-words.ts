/** Prints every text that a person may come to read, once, with the files it stands in: `npm run words`. */
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

const places = new Map<string, string[]>()
for (const { path, shown } of readSources(['core', 'renderer', 'electron'].flatMap(sourcesOf))) {
  for (const text of new Set(shown)) places.set(text, [...(places.get(text) ?? []), path])
}
for (const [text, paths] of [...places].sort(([a], [b]) => (a < b ? -1 : 1))) {
  console.log(`${text}\t${paths.join(', ')}`)
}
