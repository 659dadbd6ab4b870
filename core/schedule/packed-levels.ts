/**
 * What is left of several resources at each grid step, packed side by side into 32-bit words. Each field has one guard bit
 * above its value: with guards set, one subtraction tests all resources of a word, since a field that falls below zero
 * borrows its own guard.
 */
export interface PackedLevels {
  readonly words: number
  readonly guards: Int32Array
  /** What is left when nothing is placed, guards set. */
  readonly full: Int32Array
  /** Demand of each task in each word: `demands[word][task]`. */
  readonly demands: readonly Int32Array[]
}

export function packLevels(capacities: readonly number[], demands: readonly Int32Array[]): PackedLevels {
  const guards: number[] = []
  const full: number[] = []
  const rows: Int32Array[] = []
  let used = 33
  for (const [resource, capacity] of capacities.entries()) {
    const bits = 33 - Math.clz32(capacity)
    if (used + bits > 32) {
      guards.push(0)
      full.push(0)
      rows.push(new Int32Array(demands.length))
      used = 0
    }
    const word = guards.length - 1
    const row = rows[word] as Int32Array
    guards[word] = (guards[word] as number) | (1 << (used + bits - 1))
    full[word] = (full[word] as number) | (capacity << used)
    for (const [task, needs] of demands.entries())
      row[task] = (row[task] as number) | ((needs[resource] as number) << used)
    used += bits
  }
  return {
    words: guards.length,
    guards: Int32Array.from(guards),
    full: Int32Array.from(full, (value, word) => value | (guards[word] as number)),
    demands: rows,
  }
}
