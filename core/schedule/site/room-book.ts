import { type NetTask, never, type SiteNet } from '../net/site-net.ts'

/** Keeps the span for which each room is out of use; a room with tasks still to place has no end yet. */
export function createRoomBook(net: SiteNet) {
  const { tasks, roomCount, roomLimit } = net
  const tasksLeft = new Int32Array(roomCount)
  for (const task of tasks) if (task.outOfUse !== null) tasksLeft[task.room] = (tasksLeft[task.room] ?? 0) + 1
  const first = new Int32Array(roomCount)
  const last = new Int32Array(roomCount)
  const waiting = new Int32Array(roomCount)
  const firstBefore = new Int32Array(tasks.length)
  const lastBefore = new Int32Array(tasks.length)
  let givenBack = 0

  const lastOf = (room: number): number => ((waiting[room] as number) > 0 ? never : (last[room] as number))
  const isOpen = (room: number): boolean => (first[room] as number) !== never

  /** Rooms other than `room` that are out of use at a tick. */
  function othersAt(room: number, tick: number): number {
    let count = 0
    for (let other = 0; other < roomCount; other++) {
      if (other === room || !isOpen(other)) continue
      if ((first[other] as number) <= tick && tick < lastOf(other)) count++
    }
    return count
  }

  function isFull(room: number, from: number, to: number): boolean {
    if (othersAt(room, from) >= roomLimit) return true
    for (let other = 0; other < roomCount; other++) {
      if (other === room || !isOpen(other)) continue
      const opens = first[other] as number
      if (opens > from && opens < to && othersAt(room, opens) >= roomLimit) return true
    }
    return false
  }

  return {
    givenBack: (): number => givenBack,
    clear(): void {
      first.fill(never)
      last.fill(-never)
      waiting.set(tasksLeft)
      givenBack = 0
    },
    /** 0 when the room may be out of use for this task too, else the tick from which it may be, or never. */
    blockedUntil(task: NetTask, start: number, end: number): number {
      if (roomLimit >= roomCount || task.outOfUse === null) return 0
      const { room } = task
      const from = Math.min(first[room] as number, start - task.outOfUse.before)
      if (from === first[room]) return 0
      const isLast = (waiting[room] as number) === 1
      const to = isLast ? Math.max(last[room] as number, end + task.outOfUse.after) : never
      if (!isFull(room, from, to)) return 0
      // A room out of use already need not be so any sooner for this task.
      let next = isOpen(room) ? (first[room] as number) : never
      for (let other = 0; other < roomCount; other++) {
        const until = lastOf(other)
        if (other !== room && isOpen(other) && until > start - task.outOfUse.before && until < next)
          next = until
      }
      return next === never ? never : next + task.outOfUse.before
    },
    enter(task: NetTask, start: number, end: number): void {
      const { room } = task
      const { before, after } = task.outOfUse ?? { before: 0, after: 0 }
      firstBefore[task.index] = first[room] as number
      lastBefore[task.index] = last[room] as number
      first[room] = Math.min(first[room] as number, start - before)
      last[room] = Math.max(last[room] as number, end + after)
      waiting[room] = (waiting[room] as number) - 1
      if (waiting[room] === 0) givenBack++
    },
    remove(task: NetTask): void {
      if (waiting[task.room] === 0) givenBack--
      first[task.room] = firstBefore[task.index] as number
      last[task.room] = lastBefore[task.index] as number
      waiting[task.room] = (waiting[task.room] as number) + 1
    },
  }
}
