// Writes the JSON files of this folder from their sources: npx node demo-data/build-demo.ts
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { demoFiles } from './demo-files.ts'

for (const [name, text] of Object.entries(demoFiles())) {
  writeFileSync(join(import.meta.dirname, name), text)
}
