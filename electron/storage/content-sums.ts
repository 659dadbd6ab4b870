import type { Database } from 'better-sqlite3'
import { present } from '../../core/lists/lists.ts'

/** Kept by the program's own hand, not by a job; a picture is known by its own sum and looked at when it is read. */
const apart = ['applied_migrations', 'content_sums', 'pictures']

/** The function of SQL that sums up a row. */
const rowSum = 'content_row_sum'

/**
 * From here on every change of a row changes the sum of its table and job in the same transaction, by triggers of this connection. SQLite
 * notices a broken page, but not a letter that turned into another one on the disk.
 */
export function keepSums(database: Database): void {
  if (!hasSums(database)) return
  defineRowSum(database)
  for (const table of summedTables(database)) {
    const [old, fresh] = [sumOf(database, table, 'old.'), sumOf(database, table, 'new.')]
    const place = (row: string) => `table_name = '${table}' AND job_key = ${row}.job_key`
    database.exec(`
      CREATE TEMP TRIGGER sum_added_${table} AFTER INSERT ON main.${table} BEGIN
        INSERT INTO content_sums (table_name, job_key, total) VALUES ('${table}', new.job_key, ${fresh})
          ON CONFLICT DO UPDATE SET total = total + excluded.total;
      END;
      CREATE TEMP TRIGGER sum_changed_${table} AFTER UPDATE ON main.${table} BEGIN
        UPDATE content_sums SET total = total - ${old} + ${fresh} WHERE ${place('new')};
      END;
      CREATE TEMP TRIGGER sum_removed_${table} AFTER DELETE ON main.${table} BEGIN
        UPDATE content_sums SET total = total - ${old} WHERE ${place('old')};
      END;`)
  }
}

/** After rows were written past the triggers, by a migration. */
export function rebuildSums(database: Database): void {
  if (!hasSums(database)) return
  defineRowSum(database)
  database.transaction(() => {
    database.exec('DELETE FROM content_sums')
    for (const table of summedTables(database)) {
      database.exec(`INSERT INTO content_sums (table_name, job_key, total)
        SELECT '${table}', job_key, sum(${sumOf(database, table, '')}) FROM ${table} GROUP BY job_key`)
    }
  })()
}

/** The first table whose rows are not what they were when they were written; null where all are, or where an older form has no sums. */
export function findChangedContent(database: Database): string | null {
  if (!hasSums(database)) return null
  defineRowSum(database)
  const kept = database
    .prepare<[string], [string, number]>(
      'SELECT job_key, total FROM content_sums WHERE table_name = ? AND total <> 0',
    )
    .raw()
  for (const table of summedTables(database)) {
    const counted = database
      .prepare<[], [string, number]>(
        `SELECT job_key, sum(${sumOf(database, table, '')}) FROM ${table} GROUP BY job_key`,
      )
      .raw()
      .all()
    const known = new Map(kept.all(table))
    if (known.size !== counted.length || counted.some(([jobKey, total]) => known.get(jobKey) !== total))
      return table
  }
  return null
}

function hasSums(database: Database): boolean {
  const found = database
    .prepare(`SELECT count(*) FROM sqlite_schema WHERE name = 'content_sums'`)
    .pluck()
    .get()
  return found === 1
}

function summedTables(database: Database): readonly string[] {
  const names = database
    .prepare<[], string>(
      `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`,
    )
    .pluck()
    .all()
  return names.filter((name) => !apart.includes(name))
}

/** The call that sums up a row; columns that are derived from others say nothing new and are left out. */
function sumOf(database: Database, table: string, row: string): string {
  const columns = database
    .prepare<[string], string>('SELECT name FROM pragma_table_info(?)')
    .pluck()
    .all(table)
  return `${rowSum}(${columns.map((name) => `${row}${name}`).join(', ')})`
}

function defineRowSum(database: Database): void {
  database.function(rowSum, { deterministic: true, varargs: true }, (...cells: readonly unknown[]) =>
    cells.reduce<number>((sum, cell) => cellSum(sum, cell), 1),
  )
}

/** FNV-1a, 32 bits (Fowler, Noll and Vo), over the cells of a row; one sign that differs always makes another sum. */
function cellSum(before: number, cell: unknown): number {
  const signs = Buffer.isBuffer(cell) ? cell : String(cell)
  let sum = before
  for (let at = 0; at < signs.length; at++) {
    const sign = typeof signs === 'string' ? signs.charCodeAt(at) : present(signs[at])
    sum = Math.imul(sum ^ sign, 0x01000193)
  }
  return Math.imul(sum ^ 0x1f, 0x01000193) >>> 0
}
