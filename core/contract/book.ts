/** Why the book of jobs is not open. */
export const shutReasons = [
  /** A page of the file or the whole form of it cannot be read. */
  'damaged',
  /** The file is whole, but its log is not: edits at the end of it cannot be read. */
  'logDamaged',
  /** There is no file, but backups lie beside its place. */
  'missing',
  /** There is a file with nothing in it, and backups lie beside it. */
  'empty',
  /** The file is a whole book, but another one than the backups beside it are of. */
  'replaced',
  /** The file was exchanged, changed or taken away while the program had it open. */
  'exchanged',
  /** A newer program wrote it, or another build. */
  'newer',
  /** A database of another program. */
  'foreign',
  /** A folder, a link to nowhere, a read-only file, a full disk: the place, not the book. */
  'unreachable',
] as const
export type ShutReason = (typeof shutReasons)[number]

/** What can be done about a shut book, besides going back to a backup. */
export const waysOut = [
  'tryAgain',
  /** What stands at the place is set aside, and an empty book is begun. */
  'startNew',
  /** The file at the place is taken for the book from now on. */
  'openAsItIs',
  /** File and log are set aside as they are, and a copy of them is opened as far as it can be read. */
  'openReadablePart',
] as const
export type WayOut = (typeof waysOut)[number]

export interface ShutBook {
  readonly reason: ShutReason
  /** What is so and what to do. */
  readonly sentence: string
  readonly waysOut: readonly WayOut[]
}

export interface BookState {
  readonly bookPath: string
  readonly backupFolder: string
  /** Null while the book is open. */
  readonly shut: ShutBook | null
  /** What the user should know though the book is open, a backup that failed among it; whole sentences. */
  readonly warnings: readonly string[]
}

/** Why a backup was made. */
const backupKinds = [
  /** On closing, after hours of work, or on opening when the last session ended without one. */
  'work',
  /** Before the book was brought to a newer form. */
  'beforeForm',
  /** Before a job was taken out of the book. */
  'beforeRemoval',
  /** What the program had when it found the file exchanged under it. */
  'exchanged',
  /** No backup but a book that was put aside for another one, with its log, as it was. */
  'setAside',
] as const
export type BackupKind = (typeof backupKinds)[number]

export interface BackupSummary {
  /** Name of its file in the folder of backups. */
  readonly name: string
  readonly kind: BackupKind
  /** ISO instant, UTC. */
  readonly takenAt: string
  readonly bytes: number
  /** Null where the file cannot be read. */
  readonly jobCount: number | null
}
