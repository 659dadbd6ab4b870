import { createHash } from 'node:crypto'
import type { Database } from 'better-sqlite3'
import type { BookPicture } from '../../core/pictures/picture-bounds.ts'
import { roomForPicture } from '../../core/pictures/picture-bounds.ts'
import { lookAtPicture } from '../../core/pictures/picture-look.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { picturesNamed } from '../../core/work-order/pictured.ts'

/** What a picture is known by. */
export function pictureHash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}

/** Puts pictures into the book; one it has already stays as it is. Runs inside the caller's transaction. */
export function insertPictures(
  database: Database,
  pictures: readonly BookPicture[],
  now: string,
): Outcome<null> {
  const has = database.prepare('SELECT 1 FROM pictures WHERE hash = ?').pluck()
  const insert = database.prepare(
    'INSERT INTO pictures (hash, media_type, kept_at, byte_count, bytes) VALUES (?, ?, ?, ?, ?)',
  )
  let total =
    database.prepare<[], number>('SELECT coalesce(sum(byte_count), 0) FROM pictures').pluck().get() ?? 0
  for (const { hash, mediaType, bytes } of pictures) {
    if (has.get(hash) !== undefined) continue
    const room = roomForPicture(total, bytes.length)
    if (!room.ok) return room
    insert.run(hash, mediaType, now, bytes.length, bytes)
    total += bytes.length
  }
  return succeed(null)
}

/** A picture whose bytes are still what they are known by. */
export function readPicture(database: Database, hash: string): Outcome<BookPicture> {
  const bytes = database.prepare('SELECT bytes FROM pictures WHERE hash = ?').pluck().get(hash)
  if (!Buffer.isBuffer(bytes)) {
    return fail('notFound', 'The picture is not in this book: it stayed behind when the job was sent.', [
      hash,
    ])
  }
  const look = lookAtPicture(bytes)
  if (!look.ok || pictureHash(bytes) !== hash) {
    return fail('fileDamaged', 'The picture was damaged on the disk. A backup may have it still.', [hash])
  }
  return succeed({ hash, mediaType: look.value.mediaType, bytes })
}

/** Of the pictures a job refers to those that are in the book: the small ones first, then by the order of the photos. */
export function pictureSizes(
  database: Database,
  jobKey: string,
): readonly { readonly hash: string; readonly bytes: number }[] {
  const { small, large } = referredBy(database, jobKey)
  const size = database.prepare<[string], number>('SELECT byte_count FROM pictures WHERE hash = ?').pluck()
  return [...new Set([...small, ...large])].flatMap((hash) => {
    const bytes = size.get(hash)
    return bytes === undefined ? [] : [{ hash, bytes }]
  })
}

/** All that are whole of the pictures a job refers to. */
export function picturesOfJob(database: Database, jobKey: string): readonly BookPicture[] {
  return pictureSizes(database, jobKey).flatMap(({ hash }) => {
    const read = readPicture(database, hash)
    return read.ok ? [read.value] : []
  })
}

/** Takes away the pictures that no photo, no floor, no paper and no letterhead refers to. */
export function sweepPictures(database: Database): void {
  const hashes = database.prepare<[], string>('SELECT hash FROM pictures').pluck().all()
  // Most books have none; then all that refers to pictures need not be read at every start.
  if (hashes.length === 0) return
  const { small, large } = referredBy(database, null)
  const referred = new Set([...small, ...large])
  const remove = database.prepare('DELETE FROM pictures WHERE hash = ?')
  const left = hashes.filter((hash) => !referred.has(hash))
  const removeAll = database.transaction(() => {
    for (const hash of left) remove.run(hash)
  })
  if (left.length > 0) removeAll()
}

/** Hashes that a job refers to, or all jobs of the book: at its letterhead, by its photos, under its floors, and in papers given out. */
function referredBy(
  database: Database,
  jobKey: string | null,
): { readonly small: readonly string[]; readonly large: readonly string[] } {
  const rows = (sql: string) =>
    database.prepare<[{ jobKey: string | null }], string>(sql).pluck().all({ jobKey })
  const where = 'WHERE (@jobKey IS NULL OR job_key = @jobKey)'
  const photos = (field: string) =>
    rows(`SELECT body ->> '$.${field}' FROM photos ${where} ORDER BY job_key, position`)
  const papers = rows(`SELECT body FROM issued ${where} AND instr(body, 'data-picture') > 0`)
  const underlays = rows(
    `SELECT body ->> '$.underlay.picture' FROM storeys ${where} AND body ->> '$.underlay.picture' IS NOT NULL`,
  )
  const logos = rows(`SELECT business ->> '$.logo' FROM jobs ${where} AND business ->> '$.logo' IS NOT NULL`)
  return {
    small: [...logos, ...photos('small'), ...papers.flatMap(picturesNamed)],
    large: [...underlays, ...photos('picture')],
  }
}
