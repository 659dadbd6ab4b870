import type { NetTask, SiteNet } from '../net/site-net.ts'
import type { Fit } from './site-ledger.ts'
import type { SitePlacements } from './site-placements.ts'

/** Picks the people for a task: rare skills stay free, people stay in their room and with their product. */
export function createTeamChooser(net: SiteNet, placements: SitePlacements) {
  const people = net.problem.people.length
  const skills = net.problem.people.map((person) => person.skills.length)
  const lastTask = new Int32Array(people)

  function score(task: NetTask, person: number, start: number, taste: number): number {
    if ((task.promisedTeam >> person) & 1) return -1000
    const last = lastTask[person] as number
    const noise = ((Math.imul(taste + 1, 0x9e3779b1) >>> (person % 29)) & 7) + person / 64
    if (last < 0) return (skills[person] as number) * 8 + noise
    const sameRoom = net.tasks[last]?.room === task.room ? 6 : 0
    const sameProduct = task.product >= 0 && net.tasks[last]?.product === task.product ? 4 : 0
    const noGap = placements.end[last] === start ? 4 : 0
    return (skills[person] as number) * 8 + noise - sameRoom - sameProduct - noGap
  }

  function best(task: NetTask, among: number, start: number, taste: number): number {
    let found = -1
    let least = Number.POSITIVE_INFINITY
    for (let person = 0; person < people; person++) {
      if (((among >> person) & 1) === 0) continue
      const value = score(task, person, start, taste)
      if (value < least) {
        least = value
        found = person
      }
    }
    return found
  }

  return {
    clear: () => lastTask.fill(-1),
    choose(task: NetTask, size: number, fit: Fit, taste: number): number {
      if (size === 0 || fit.duration === 0) return 0
      if (task.team !== 0) return task.team
      let team = 0
      let rest = fit.people
      const groups = net.calendars[fit.calendar]?.peopleOfGroup ?? []
      for (let picked = 0; picked < size; picked++) {
        const among = picked < groups.length ? rest & (groups[picked] as number) : rest
        const person = best(task, among, fit.start, taste)
        team |= 1 << person
        rest &= ~(1 << person)
        lastTask[person] = task.index
      }
      return team
    },
  }
}
