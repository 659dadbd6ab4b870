import { execFile } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { expect, test } from 'vitest'
import { writeJobFile } from '../../core/project/job-file.ts'
import { fail, succeed } from '../../core/project/problem.ts'
import { gatheringHost } from '../../electron/headless/gathering-host.ts'
import { type PlanParts, planCommand } from '../../electron/headless/plan-command.ts'
import { planFiles } from '../../electron/headless/plan-files.ts'
import { readWords } from '../../electron/headless/summary-words.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { openBook, testFolder } from '../storage/books.ts'
import { quietHandlers } from './handler-parts.ts'

const run = promisify(execFile)
const root = join(import.meta.dirname, '..', '..')

const titleOnly: PlanParts['makeFiles'] = (job) =>
  succeed({
    files: { 'title.txt': job.header.title, 'two.txt': '2' },
    summary: [`Planned ${job.header.title}`],
  })

/** Runs the command in a folder of its own that holds `job.json`. */
async function runIn(folder: string, words: readonly string[], makeFiles = titleOnly) {
  const said: string[] = []
  const complaints: string[] = []
  const progress: string[] = []
  const { host, documents } = gatheringHost('0.0.0')
  const code = await planCommand(words, {
    handlers: quietHandlers({ host, store: openBook(':memory:') }),
    documents,
    makeFiles,
    say: (line) => said.push(line),
    progress: (line) => progress.push(line),
    complain: (line) => complaints.push(line),
  })
  return { code, said, complaints, progress, left: readdirSync(folder).sort() }
}

test('what is being worked on is said before it is, beside the answer', async () => {
  const folder = folderWithJob(readFileSync(join(root, 'demo-data', 'plain-room.json'), 'utf8'))
  const done = await runIn(folder, [join(folder, 'job.json'), '--out', join(folder, 'out')], (job, say) =>
    planFiles(job, '2027-03-26T18:00', say),
  )
  expect(done.progress.map((line) => line.split(' ')[0])).toEqual([
    'Measuring',
    'Specifying',
    'Planning',
    'Pricing',
  ])
  expect(done.progress[0]).toBe('Measuring 1 room …')
  expect(done.said.join(' ')).not.toContain('Measuring')
})

function folderWithJob(text = writeJobFile(plainJob())): string {
  const folder = testFolder()
  writeFileSync(join(folder, 'job.json'), text)
  return folder
}

test('the words of the command line are read in either order', () => {
  const wanted = succeed({ jobFile: 'job.json', outFolder: 'out' })
  expect(readWords(['job.json', '--out', 'out'])).toEqual(wanted)
  expect(readWords(['--out', 'out', 'job.json'])).toEqual(wanted)
  expect(readWords(['job.json', '--out=out'])).toEqual(wanted)
})

test('missing, doubled and unknown words are answered with how to use the command', () => {
  const wrong = [
    [],
    ['job.json'],
    ['--out', 'out'],
    ['job.json', '--out'],
    ['a', 'b', '--out', 'out'],
    ['--fast', 'a'],
  ]
  for (const words of wrong) {
    const read = readWords(words)
    expect(read.ok ? words : read.problem.sentence).toContain('npm run plan -- <job.json> --out <folder>')
  }
})

test('a good job is planned, written, and summed up in a few lines', async () => {
  const folder = folderWithJob()
  const out = join(folder, 'deep', 'out')
  const { code, said, complaints, left } = await runIn(folder, [join(folder, 'job.json'), '--out', out])
  expect({ code, complaints, left }).toEqual({ code: 0, complaints: [], left: ['deep', 'job.json'] })
  expect(said).toEqual(['Planned One plain room', `Written to ${out}: title.txt, two.txt`])
  expect(readFileSync(join(out, 'title.txt'), 'utf8')).toBe('One plain room')
  expect(readdirSync(join(folder, 'deep'))).toEqual(['out'])
})

test('a job file that begins with a byte order mark is read like any other', async () => {
  const folder = folderWithJob(`\uFEFF${writeJobFile(plainJob())}`)
  const done = await runIn(folder, [join(folder, 'job.json'), '--out', join(folder, 'out')])
  expect(done).toMatchObject({ code: 0, complaints: [], left: ['job.json', 'out'] })
})

test('a second run replaces its own files and leaves others alone', async () => {
  const folder = folderWithJob()
  const out = join(folder, 'out')
  mkdirSync(out)
  writeFileSync(join(out, 'title.txt'), 'old')
  writeFileSync(join(out, 'mine.txt'), 'mine')
  expect((await runIn(folder, [join(folder, 'job.json'), '--out', out])).code).toBe(0)
  expect(readFileSync(join(out, 'title.txt'), 'utf8')).toBe('One plain room')
  expect(readFileSync(join(out, 'mine.txt'), 'utf8')).toBe('mine')
})

test('bad input exits with its sentence and writes nothing', async () => {
  const folder = folderWithJob('{"format": "a shopping list"}')
  const out = join(folder, 'out')
  const bad = await runIn(folder, [join(folder, 'job.json'), '--out', out])
  expect(bad).toMatchObject({ code: 1, said: [], left: ['job.json'] })
  expect(bad.complaints).toHaveLength(1)
  const missing = await runIn(folder, [join(folder, 'none.json'), '--out', out])
  expect(missing).toMatchObject({ code: 1, left: ['job.json'] })
  expect(missing.complaints).toEqual([`There is no file ${join(folder, 'none.json')}.`])
  const notFile = await runIn(folder, [folder, '--out', out])
  expect(notFile).toMatchObject({
    code: 1,
    complaints: [`${folder} is a folder; a job file is needed.`],
    left: ['job.json'],
  })
})

test('a job that cannot be planned writes nothing', async () => {
  const folder = folderWithJob()
  const noPlan = () => fail('noPlan', 'Nobody of the crew may use a fine brush.')
  const { code, complaints, left } = await runIn(
    folder,
    [join(folder, 'job.json'), '--out', join(folder, 'out')],
    noPlan,
  )
  expect({ code, complaints, left }).toEqual({
    code: 1,
    complaints: ['Nobody of the crew may use a fine brush.'],
    left: ['job.json'],
  })
})

test('a place that is no folder is refused and stays as it is', async () => {
  const folder = folderWithJob()
  const out = join(folder, 'out')
  writeFileSync(out, 'a file')
  const refused = await runIn(folder, [join(folder, 'job.json'), '--out', out])
  expect(refused).toMatchObject({ code: 1, left: ['job.json', 'out'] })
  expect(readFileSync(out, 'utf8')).toBe('a file')
})

test('npm run plan writes all the files of a plan, and the same ones again', async () => {
  const folder = testFolder()
  const command = join(root, 'electron', 'launch', 'plan.mjs')
  const plan = (out: string) =>
    run(process.execPath, [command, join(root, 'demo-data', 'plain-room.json'), '--out', join(folder, out)])
  const { stdout } = await plan('first')
  await plan('second')
  const names = readdirSync(join(folder, 'first')).sort()
  expect(names).toEqual([
    'calendar-ash.ics',
    'calendar-kit.ics',
    'calendar-robin.ics',
    'crew-calendar.ics',
    'estimate.json',
    'family-calendar.ics',
    'quantities.json',
    'schedule.json',
    'shopping-list.csv',
    'specification.json',
    'work-order.html',
    'work-order.json',
  ])
  expect(stdout).toMatch(/^One plain room: 1 room, /)
  for (const name of names.filter((each) => !each.endsWith('.ics'))) {
    const [first, second] = ['first', 'second'].map((out) => readFileSync(join(folder, out, name), 'utf8'))
    expect(first === second ? 'same' : `${name} differs`).toBe('same')
  }
})

test('npm run plan on bad input exits with an error and its sentence', async () => {
  const folder = folderWithJob('{"format": "coatwright-job", "version": 99}')
  const command = join(root, 'electron', 'launch', 'plan.mjs')
  const failed = await run(process.execPath, [
    command,
    join(folder, 'job.json'),
    '--out',
    join(folder, 'out'),
  ]).catch((error) => error)
  expect(failed).toMatchObject({ code: 1 })
  expect(failed.stderr).toContain('Use a newer program')
  expect(readdirSync(folder)).toEqual(['job.json'])
})
