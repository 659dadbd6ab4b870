import type { BackupKind } from '../../core/contract/book.ts'
import { keysOf } from '../../core/lists/lists.ts'

/** What the name of a backup's file says. */
export interface BackupName {
  readonly name: string
  readonly kind: BackupKind
  /** ISO instant, UTC. */
  readonly takenAt: string
}

const beginnings = {
  work: 'work',
  beforeRemoval: 'removal',
  exchanged: 'exchanged',
  setAside: 'set-aside',
} as const satisfies Record<Exclude<BackupKind, 'beforeForm'>, string>

const pattern =
  /^(work|opened|removal|exchanged|set-aside|before-\d{4})-(\d{4}-\d\d-\d\dT\d\d)-(\d\d)-(\d\d)-(\d{3}Z)\.sqlite$/

/** `work-2027-03-31T08-30-05-123Z.sqlite`; `at` is an ISO instant. */
export function nameBackup(kind: Exclude<BackupKind, 'beforeForm'>, at: string): string {
  return nameFile(beginnings[kind], at)
}

/** The copy made before migration `number` is applied. */
export function nameBeforeForm(number: number, at: string): string {
  return nameFile(`before-${String(number).padStart(4, '0')}`, at)
}

function nameFile(beginning: string, at: string): string {
  return `${beginning}-${at.replaceAll(/[:.]/g, '-')}.sqlite`
}

/** Null for a file that is no backup of ours. `opened` is what the backups of work were called at first. */
export function readBackupName(name: string): BackupName | null {
  const [, beginning, hour, minute, second, rest] = pattern.exec(name) ?? []
  if (beginning === undefined) return null
  const takenAt = `${hour}:${minute}:${second}.${rest}`
  return Number.isNaN(Date.parse(takenAt)) ? null : { name, kind: kindOf(beginning), takenAt }
}

function kindOf(beginning: string): BackupKind {
  if (beginning.startsWith('before-')) return 'beforeForm'
  return keysOf(beginnings).find((kind) => beginnings[kind] === beginning) ?? 'work'
}
