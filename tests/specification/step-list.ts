import type { Specification } from '../../core/specification/types.ts'

/** The steps of one room in order, `ceiling/fill/1 settingFiller`: the key without the room, and what is put on. */
export function stepList(specification: Specification, roomId: string): readonly string[] {
  return specification.steps
    .filter((step) => step.roomId === roomId)
    .map((step) => {
      const name = step.key.slice(roomId.length + 1)
      return step.productClass === null ? name : `${name} ${step.productClass}`
    })
}

/** Whether the order says, directly or over others, that one step comes before another. */
export function comesBefore(specification: Specification, before: string, after: string): boolean {
  const outgoing = new Map<string, string[]>()
  for (const edge of specification.order) {
    outgoing.set(edge.before, [...(outgoing.get(edge.before) ?? []), edge.after])
  }
  const seen = new Set<string>([before])
  const open = [before]
  for (let key = open.pop(); key !== undefined; key = open.pop()) {
    for (const next of outgoing.get(key) ?? []) {
      if (next === after) return true
      if (!seen.has(next)) {
        seen.add(next)
        open.push(next)
      }
    }
  }
  return false
}
