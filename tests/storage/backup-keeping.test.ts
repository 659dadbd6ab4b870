import { array, assert, constantFrom, integer, property, record } from 'fast-check'
import { expect, test } from 'vitest'
import { backupsToRemove } from '../../electron/storage/backup-keeping.ts'
import {
  type BackupName,
  nameBackup,
  nameBeforeForm,
  readBackupName,
} from '../../electron/storage/backup-names.ts'

const day = 86_400_000
const week = 7 * day
const now = '2027-03-31T12:00:00.000Z'

function madeBefore(milliseconds: number, kind: 'work' | 'beforeRemoval' | 'setAside' = 'work'): BackupName {
  const name = nameBackup(kind, new Date(Date.parse(now) - milliseconds).toISOString())
  return readBackupName(name) as BackupName
}

function left(backups: readonly BackupName[], at = now): readonly BackupName[] {
  const gone = new Set(backupsToRemove(backups, at))
  return backups.filter(({ name }) => !gone.has(name))
}

const spanOf = (backup: BackupName, span: number) => Math.floor(Date.parse(backup.takenAt) / span)

test('names tell kind and moment, the ones given by older programs too, and nothing else is a backup', () => {
  expect(readBackupName(nameBackup('work', now))).toMatchObject({ kind: 'work', takenAt: now })
  expect(readBackupName(nameBackup('beforeRemoval', now))).toMatchObject({
    kind: 'beforeRemoval',
    takenAt: now,
  })
  expect(readBackupName(nameBeforeForm(12, now))).toMatchObject({ kind: 'beforeForm', takenAt: now })
  expect(readBackupName('opened-2027-03-31T12-00-00-000Z.sqlite')).toMatchObject({
    kind: 'work',
    takenAt: now,
  })
  const strangers = [
    'work-2027-03-31T12-00-00-000Z.sqlite.half',
    'notes.txt',
    'work-2027-99-99T12-00-00-000Z.sqlite',
    '../work-2027-03-31T12-00-00-000Z.sqlite',
  ]
  expect(strangers.map(readBackupName)).toEqual([null, null, null, null])
})

test('a hundred openings in an hour push nothing older out', () => {
  const old = [madeBefore(2 * day), madeBefore(9 * day), madeBefore(100 * day)]
  const rush = Array.from({ length: 100 }, (_, minutes) => madeBefore(minutes * 36_000))
  const kept = left([...old, ...rush])
  expect(old.every((backup) => kept.includes(backup))).toBe(true)
  expect(kept).toHaveLength(3 + 24)
})

test('after a year of four backups a day, what is left is a day, two weeks and a year', () => {
  const all = Array.from({ length: 4 * 366 }, (_, index) => madeBefore(index * (day / 4)))
  const kept = left(all)
  expect(kept.length).toBeLessThanOrEqual(4 + 14 + 53)
  expect(new Set(kept.map((backup) => spanOf(backup, week))).size).toBeGreaterThanOrEqual(52)
})

const someBackups = array(
  record({
    ago: integer({ min: 0, max: 500 * day }),
    kind: constantFrom('work' as const, 'beforeRemoval' as const, 'setAside' as const),
  }),
  { maxLength: 60 },
)

test('for any backups: tidying twice is tidying once, the newest stays, and no day or week is left without', () => {
  assert(
    property(someBackups, (made) => {
      const all = made.map(({ ago, kind }) => madeBefore(ago, kind))
      const kept = left(all)
      expect(left(kept)).toEqual(kept)
      const work = (backups: readonly BackupName[]) => backups.filter(({ kind }) => kind === 'work')
      for (const [span, longest] of [
        [day, 14 * day],
        [week, 53 * week],
      ] as const) {
        for (const backup of work(all)) {
          if (Date.parse(now) - Date.parse(backup.takenAt) >= longest - span) continue
          expect(work(kept).some((other) => spanOf(other, span) === spanOf(backup, span))).toBe(true)
        }
      }
      const newest = [...work(all)].sort((one, other) => (one.takenAt < other.takenAt ? 1 : -1))[0]
      if (newest !== undefined) expect(kept).toContain(newest)
      expect(kept.filter(({ kind }) => kind === 'setAside')).toEqual(
        all.filter(({ kind }) => kind === 'setAside'),
      )
    }),
  )
})

test('tidied every few hours over months, every day of two weeks and every week still has its newest backup', () => {
  assert(
    property(array(integer({ min: 1, max: 60 }), { minLength: 20, maxLength: 120 }), (hoursBetween) => {
      let at = Date.parse(now)
      const ever: BackupName[] = []
      let held: readonly BackupName[] = []
      for (const hours of hoursBetween) {
        at += hours * 3_600_000
        const instant = new Date(at).toISOString()
        const made = readBackupName(nameBackup('work', instant)) as BackupName
        ever.push(made)
        held = left([...held, made], instant)
      }
      for (const [span, longest] of [
        [day, 14 * day],
        [week, 53 * week],
      ] as const) {
        for (const backup of ever) {
          if (at - Date.parse(backup.takenAt) >= longest - span) continue
          expect(held.some((other) => spanOf(other, span) === spanOf(backup, span))).toBe(true)
        }
      }
    }),
  )
})
