import { execFileSync, spawnSync } from 'node:child_process'
import { chmodSync, chownSync, existsSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, expect, onTestFinished, type TestContext, test } from 'vitest'
import { writeJobFile } from '../../core/project/job-file.ts'
import { backupFolder } from '../../electron/storage/book-files.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { migrationOf } from '../../electron/storage/migrations.ts'
import type { Store } from '../../electron/storage/store.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { granted, migrations, openKeeper, testFolder } from '../storage/books.ts'

const counts: string[] = []
afterAll(() => console.log(`Full disk: ${counts.join('; ')}`))

const isRoot = process.getuid?.() === 0
const megabytes = 4
const fileText = writeJobFile(plainJob())

/** A file system of four megabytes, gone when the test ends; null where this user may not mount one. */
function smallDisk(): string | null {
  if (process.platform !== 'linux' || !isRoot) return null
  const folder = testFolder()
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m,mode=700`, 'tmpfs', folder])
  if (mounted.status !== 0) return null
  onTestFinished(() => {
    execFileSync('umount', ['-l', folder])
  })
  return folder
}

function withSmallDisk(name: string, work: (folder: string) => Promise<void>): void {
  test(name, { timeout: 120_000 }, async (context: TestContext) => {
    const folder = smallDisk()
    if (folder === null) return context.skip('a small file system needs Linux and the rights to mount one')
    await work(folder)
  })
}

/** Leaves so many bytes of the disk free; answers what frees them again. */
function fillUp(folder: string, left: number): () => void {
  const { bavail, bsize } = statfsSync(folder)
  const filler = join(folder, 'filler')
  writeFileSync(filler, Buffer.alloc(Math.max(0, bavail * bsize - left)))
  return () => rmSync(filler, { force: true })
}

/** Brings jobs in until one is refused; answers their keys and the refusal. */
function importUntilFull(store: Store): { readonly told: readonly string[]; readonly sentence: string } {
  const told: string[] = []
  for (;;) {
    const made = store.import(fileText)
    if (!made.ok) return { told, sentence: made.problem.sentence }
    told.push(made.value.jobKey)
  }
}

function keysOf(keeper: Keeper): readonly string[] {
  return granted(granted(keeper.store()).list()).map(({ jobKey }) => jobKey)
}

withSmallDisk(
  'full while jobs are brought in: the refusal says so, what was told of stays, and it goes on when there is room',
  async (folder) => {
    const path = join(folder, 'book.sqlite')
    const keeper = await openKeeper(path)
    const free = fillUp(folder, 1_500_000)
    const { told, sentence } = importUntilFull(granted(keeper.store()))
    expect(sentence).toContain('The disk is full')
    expect(sentence).toContain('try again')
    expect(told.length).toBeGreaterThan(2)
    expect(new Set(keysOf(keeper))).toEqual(new Set(told))
    free()
    const after = granted(granted(keeper.store()).import(fileText)).jobKey
    await keeper.close()
    const again = await openKeeper(path)
    expect(new Set(keysOf(again))).toEqual(new Set([...told, after]))
    counts.push(`${told.length} imports acknowledged before it was full, 0 lost`)
  },
)

withSmallDisk(
  'full when a backup is due: closing and opening go on, the page is warned, no half copy is left',
  async (folder) => {
    const path = join(folder, 'book.sqlite')
    const keeper = await openKeeper(path)
    const { jobKey } = granted(granted(keeper.store()).import(fileText))
    const free = fillUp(folder, 200_000)
    await keeper.close()
    expect(readdirSync(backupFolder(path))).toEqual([])
    const again = await openKeeper(path)
    expect(again.state().shut?.sentence ?? again.state().warnings.join(' ')).toContain('disk is full')
    free()
    granted(await again.leave('tryAgain'))
    expect(keysOf(again)).toEqual([jobKey])
    await again.close()
    expect(readdirSync(backupFolder(path))).toHaveLength(1)
    counts.push('a backup that had no room left nothing half')
  },
)

withSmallDisk(
  'full when somebody goes back: refused in words, and the book is open as before',
  async (folder) => {
    const path = join(folder, 'book.sqlite')
    const first = await openKeeper(path)
    const { jobKey } = granted(granted(first.store()).import(fileText))
    await first.close()
    const keeper = await openKeeper(path)
    const [backup] = granted(await keeper.listBackups())
    const free = fillUp(folder, 100_000)
    const refused = await keeper.goBackTo(backup?.name ?? '')
    expect(refused.ok ? '' : refused.problem.sentence).toContain('The disk is full')
    expect(keeper.state().shut).toBeNull()
    expect(keysOf(keeper)).toEqual([jobKey])
    expect(existsSync(`${path}.half`)).toBe(false)
    free()
    granted(await keeper.goBackTo(backup?.name ?? ''))
    expect(keysOf(keeper)).toEqual([jobKey])
    counts.push('going back was refused once for want of room and done when there was some')
  },
)

withSmallDisk('full during a migration: the book stays of its form, whole', async (folder) => {
  const path = join(folder, 'book.sqlite')
  const first = await openKeeper(path)
  const { jobKey } = granted(granted(first.store()).import(fileText))
  await first.close()
  const large = `CREATE TABLE large (body TEXT) STRICT; INSERT INTO large SELECT hex(zeroblob(3000000));`
  const steps = [...migrations, migrationOf(migrations.length + 1, 'planted', large)]
  const keeper = await openKeeper(path, { migrations: steps })
  expect(keeper.state().shut?.sentence).toContain('was left as it was')
  await keeper.close()
  expect(keysOf(await openKeeper(path))).toEqual([jobKey])
  counts.push('a migration that had no room was taken back')
})

test('a limit on the size of files: refused in words, what was told of stays', {
  timeout: 60_000,
}, async (context) => {
  if (process.platform !== 'linux') return context.skip('limits are set with ulimit of Linux')
  const path = join(testFolder(), 'book.sqlite')
  const first = await openKeeper(path, { newJobKey: () => 'kept' })
  granted(granted(first.store()).create(plainJob()))
  await first.close()
  const worker = join(import.meta.dirname, 'book-worker.ts')
  const command = `trap '' XFSZ; ulimit -f 1200; exec "$0" --experimental-strip-types --no-warnings "$1" imports "$2" 500`
  const ran = spawnSync('bash', ['-c', command, process.execPath, worker, path], { encoding: 'utf8' })
  const said = ran.stdout.trim().split('\n')
  expect(said.at(-1)).toContain('refused storageFailed: The disk is full')
  const keeper = await openKeeper(path)
  expect(new Set(keysOf(keeper))).toEqual(new Set(['kept', ...said.slice(0, -1)]))
  counts.push(`${said.length - 1} imports acknowledged under a limit, 0 lost`)
})

test('a read-only file and a read-only folder are said in words, and nothing is changed', {
  timeout: 60_000,
}, async (context) => {
  if (process.platform !== 'linux') return context.skip('rights are those of POSIX systems')
  for (const [closed, words] of [
    ['file', 'is read-only or belongs to somebody else'],
    ['folder', 'may not be written to'],
  ] as const) {
    const path = join(testFolder(), 'book.sqlite')
    const first = await openKeeper(path)
    granted(granted(first.store()).create(plainJob()))
    await first.close()
    const nobody = 65_534
    if (isRoot)
      for (const place of [dirname(path), path, `${path}.lock`, backupFolder(path)])
        chownSync(place, nobody, nobody)
    chmodSync(closed === 'file' ? path : dirname(path), closed === 'file' ? 0o400 : 0o500)
    const worker = join(import.meta.dirname, 'book-worker.ts')
    const ran = spawnSync(
      process.execPath,
      ['--experimental-strip-types', '--no-warnings', worker, 'state', path],
      {
        encoding: 'utf8',
        // The rights of files do not bind the super-user.
        ...(isRoot && { uid: nobody, gid: nobody }),
      },
    )
    chmodSync(dirname(path), 0o700)
    if (ran.stderr.includes('EACCES')) return context.skip('another user cannot read the program here')
    expect(ran.stdout).toContain('unreachable')
    expect(ran.stdout).toContain(words)
    expect(ran.stdout).toContain('try again')
  }
})
