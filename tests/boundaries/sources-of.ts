import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import type { SourceText } from './source-reading.ts'

const root = join(import.meta.dirname, '..', '..')

/** Every script below a folder of the checkout, with its text. */
export function sourcesOf(house: string): readonly SourceText[] {
  return readdirSync(join(root, house), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs|cjs|js|jsx)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !path.includes('node_modules'))
    .map((path) => ({
      path: relative(root, path).split(sep).join('/'),
      text: readFileSync(path, 'utf8'),
    }))
}
