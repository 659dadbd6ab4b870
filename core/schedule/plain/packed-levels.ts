/**
 * What is left of several resources at each grid step, packed side by side into 32-bit words. Each field has one guard bit
 * above its value: with guards set, one subtraction tests all resources of a word, since a field that falls below zero
 * borrows its own guard.
 */
interface PackedLevels {
  readonly words: number
  readonly guards: Int32Array
  /** What is left when nothing is placed, guards set. */
  readonly full: Int32Array
  /** Demand of each task in each word: `demands[word][task]`. */
  readonly demands: readonly Int32Array[]
}

function packLevels(capacities: readonly number[], demands: readonly Int32Array[]): PackedLevels {
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

/** What is left of all resources while tasks are booked and taken out. */
export interface Profile {
  /** Gives everything back. */
  clear(): void
  /** The earliest start, not before `from`, with enough left as long as the task lasts. Looks at most a task's length past the last booking. */
  firstFit(task: number, from: number): number
  book(task: number, start: number): void
  takeOut(task: number, start: number): void
}

/** `length`: grid steps that bookings may reach. */
export function createProfile(
  capacities: readonly number[],
  demands: readonly Int32Array[],
  durations: Int32Array,
  length: number,
): Profile {
  const { words, guards, full, demands: needs } = packLevels(capacities, demands)
  const longest = durations.reduce((most, duration) => Math.max(most, duration), 0)
  const levels = Array.from({ length: words }, () => new Int32Array(length + longest + 1))
  const [one, two] = levels as [Int32Array, Int32Array]
  const [oneNeeds, twoNeeds] = needs as [Int32Array, Int32Array]
  const [oneGuards, twoGuards] = guards as unknown as [number, number]
  let dirty = length + longest

  function clear(): void {
    for (let word = 0; word < words; word++) levels[word]?.fill(full[word] as number, 0, dirty + 1)
    dirty = 0
  }

  /**
   * The fits look at a stretch from its end backwards: a step where too little is left moves the start past it at once, and
   * what was seen behind it is not looked at again.
   */
  function fitOneWord(task: number, from: number): number {
    const need = oneNeeds[task] as number
    const duration = durations[task] as number
    let start = from
    for (let seen = from, tick = from + duration - 1; tick >= seen; tick--) {
      if ((((one[tick] as number) - need) & oneGuards) === oneGuards) continue
      seen = start + duration
      start = tick + 1
      tick = start + duration
    }
    return start
  }

  function fitTwoWords(task: number, from: number): number {
    const need = oneNeeds[task] as number
    const more = twoNeeds[task] as number
    const duration = durations[task] as number
    let start = from
    for (let seen = from, tick = from + duration - 1; tick >= seen; tick--) {
      const isFree =
        (((one[tick] as number) - need) & oneGuards) === oneGuards &&
        (((two[tick] as number) - more) & twoGuards) === twoGuards
      if (isFree) continue
      seen = start + duration
      start = tick + 1
      tick = start + duration
    }
    return start
  }

  function isFreeInAllWords(task: number, tick: number): boolean {
    for (let word = 0; word < words; word++) {
      const guard = guards[word] as number
      const left = (levels[word]?.[tick] as number) - (needs[word]?.[task] as number)
      if ((left & guard) !== guard) return false
    }
    return true
  }

  function fitManyWords(task: number, from: number): number {
    const duration = durations[task] as number
    let start = from
    for (let seen = from, tick = from + duration - 1; tick >= seen; tick--) {
      if (isFreeInAllWords(task, tick)) continue
      seen = start + duration
      start = tick + 1
      tick = start + duration
    }
    return start
  }

  function changeOneWord(task: number, start: number, sign: number): void {
    const need = sign * (oneNeeds[task] as number)
    const end = start + (durations[task] as number)
    for (let tick = start; tick < end; tick++) one[tick] = (one[tick] as number) - need
    if (end > dirty) dirty = end
  }

  function changeAllWords(task: number, start: number, sign: number): void {
    const end = start + (durations[task] as number)
    for (let word = 0; word < words; word++) {
      const row = levels[word] as Int32Array
      const need = sign * (needs[word]?.[task] as number)
      for (let tick = start; tick < end; tick++) row[tick] = (row[tick] as number) - need
    }
    if (end > dirty) dirty = end
  }

  const change = words === 1 ? changeOneWord : changeAllWords
  return {
    clear,
    firstFit: words === 1 ? fitOneWord : words === 2 ? fitTwoWords : fitManyWords,
    book: (task, start) => change(task, start, 1),
    takeOut: (task, start) => change(task, start, -1),
  }
}
