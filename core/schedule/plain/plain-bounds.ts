import type { PlainNet } from './plain-net.ts'

/** Earliest starts (heads) and least time from each task's start to the project's end (tails, own length included). */
export interface HeadsAndTails {
  readonly heads: Int32Array
  readonly tails: Int32Array
}

/** Longest paths by repeated relaxing; undefined when a circle of waits keeps pushing. */
export function headsAndTails(net: PlainNet): HeadsAndTails | undefined {
  const heads = new Int32Array(net.count)
  const tails = net.durations.slice()
  for (let round = 0; round <= net.count; round++) {
    let isChanged = false
    for (const { from, to, lag } of net.arcs) {
      const head = (heads[from] as number) + lag
      const tail = (tails[to] as number) + lag
      if (head > (heads[to] as number)) {
        heads[to] = head
        isChanged = true
      }
      if (tail > (tails[from] as number)) {
        tails[from] = tail
        isChanged = true
      }
    }
    if (!isChanged) return { heads, tails }
  }
  return undefined
}

/** The best of the bounds below; valid for every plan. */
export function plainBound(net: PlainNet): number {
  const paths = headsAndTails(net)
  if (paths === undefined) return net.horizon
  let bound = criticalPath(paths)
  for (let resource = 0; resource < net.capacities.length; resource++)
    bound = Math.max(bound, energyBound(net, paths, resource))
  return bound
}

function criticalPath({ heads, tails }: HeadsAndTails): number {
  return heads.reduce((most, head, task) => Math.max(most, head + (tails[task] as number)), 0)
}

/**
 * For each pair of thresholds: tasks with at least this head and at least this rest after their end need their energy between
 * the least head and the least rest, so head + energy / capacity + rest is a bound.
 */
function energyBound(net: PlainNet, { heads, tails }: HeadsAndTails, resource: number): number {
  const capacity = net.capacities[resource] as number
  if (capacity === 0) return 0
  const tasks = Array.from(net.durations.keys()).filter(
    (task) => (net.demands[task]?.[resource] as number) > 0,
  )
  const energy = (task: number): number =>
    (net.durations[task] as number) * (net.demands[task]?.[resource] as number)
  const rest = (task: number): number => (tails[task] as number) - (net.durations[task] as number)
  const byRest = tasks.slice().sort((one, other) => rest(other) - rest(one))
  let bound = 0
  for (const head of new Set(tasks.map((task) => heads[task] as number))) {
    let sum = 0
    for (const task of byRest) {
      if ((heads[task] as number) < head) continue
      sum += energy(task)
      bound = Math.max(bound, head + Math.ceil(sum / capacity) + rest(task))
    }
  }
  return bound
}
