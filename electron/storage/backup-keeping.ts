import { compareText } from '../../core/words/text.ts'
import type { BackupName } from './backup-names.ts'

const hour = 3_600_000
const day = 24 * hour
const week = 7 * day

/** Of the last 24 hours everything is kept, up to so many: work of one day makes four at most, opening and closing again and again more. */
const mostOfLastDay = 24
const keptDaily = 14 * day
const keptWeekly = 53 * week
/** What was made before a job was removed, or held the only whole copy once, is the way back for a year. */
const keptForRemoval = 366 * day

/**
 * Which backups have had their time. Of those made by work all of the last 24 hours are kept, then the newest of each day for 14 days,
 * then the newest of each week for a year; days and weeks are counted in UTC. How often the program is opened changes nothing. The newest one
 * stays whatever its age; copies from before a newer form and books set aside stay always.
 *
 * @param now ISO instant, UTC
 */
export function backupsToRemove(backups: readonly BackupName[], now: string): readonly string[] {
  const present = Date.parse(now)
  const ages = (backup: BackupName) => present - Date.parse(backup.takenAt)
  const newestFirst = [...backups].sort((one, other) => compareText(other.takenAt, one.takenAt))
  const work = newestFirst.filter(({ kind }) => kind === 'work')
  const kept = new Set([
    work[0],
    ...work.filter((backup) => ages(backup) < 0),
    ...work.filter((backup) => ages(backup) >= 0 && ages(backup) < day).slice(0, mostOfLastDay),
    ...newestOfEach(work, day).filter((backup) => ages(backup) < keptDaily),
    ...newestOfEach(work, week).filter((backup) => ages(backup) < keptWeekly),
    ...newestFirst.filter(({ kind }) => kind === 'beforeForm' || kind === 'setAside'),
    ...newestFirst.filter(
      (backup) => ['beforeRemoval', 'exchanged'].includes(backup.kind) && ages(backup) < keptForRemoval,
    ),
  ])
  return newestFirst.filter((backup) => !kept.has(backup)).map(({ name }) => name)
}

/** The first of each span of time since the epoch, of a list that has the newest first. */
function newestOfEach(newestFirst: readonly BackupName[], span: number): readonly BackupName[] {
  const spans = new Map<number, BackupName>()
  for (const backup of newestFirst) {
    const at = Math.floor(Date.parse(backup.takenAt) / span)
    if (!spans.has(at)) spans.set(at, backup)
  }
  return [...spans.values()]
}
