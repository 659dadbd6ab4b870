import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { granted } from '../storage/books.ts'

/** One of the demonstration jobs, as the program opens it. */
export function demoJob(name: 'plain-room' | 'l-shaped-room' | 'old-house'): Job {
  return granted(
    readJobFile(readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', `${name}.json`), 'utf8')),
  )
}
