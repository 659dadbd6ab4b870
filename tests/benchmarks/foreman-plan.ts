import { Decoder } from '../../core/schedule/fitting/decoder.ts'
import { buildNet, type Net } from '../../core/schedule/fitting/net.ts'
import { figuresOf } from '../../core/schedule/judge/plan-costs.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import type { Plan, ScheduleProblem } from '../../core/schedule/model.ts'
import { dispatch } from '../../core/schedule/tries/dispatch.ts'
import { walkingOrder } from '../../core/schedule/tries/foreman.ts'
import { newGenes } from '../../core/schedule/tries/genes.ts'
import { planFrom } from '../../core/schedule/tries/read-off.ts'

/**
 * What a foreman does: rooms in walking order (promised ones first, then top down and towards the door), at most K of them begun and not
 * done, whoever is free first takes the first task that may go, and stays in the room until it waits for so long that going to another one
 * is worth it. The best over all K, in one's and two's, and over two notions of "may go": at once, or within half a day. Undefined where
 * none of them holds.
 */
export function foremansPlan(problem: ScheduleProblem): Plan | undefined {
  const net = buildNet(problem)
  const decoder = new Decoder(net)
  let best: Plan | undefined
  let least = Number.POSITIVE_INFINITY
  const mostOpen = Math.min(net.rooms.length, problem.rules.roomsOutOfUse ?? net.rooms.length)
  for (let open = 1; open <= mostOpen; open++) {
    for (const together of [0, 1]) {
      for (const granularity of [1, halfDay]) {
        const plan = planByRule(net, decoder, open, together, granularity)
        if (plan === undefined || verifyPlan(problem, plan).length > 0) continue
        const { total } = figuresOf(problem, plan).cost
        if (total >= least) continue
        least = total
        best = plan
      }
    }
  }
  return best
}

const halfDay = 48
/** Ticks of waiting that going to another room is worth. */
const worthMoving = 6

function planByRule(
  net: Net,
  decoder: Decoder,
  mostOpen: number,
  together: number,
  granularity: number,
): Plan | undefined {
  const order = walkingOrder(net)
  const rule = {
    rank: order.map((rank) => order.filter((other) => other < rank).length),
    granularity,
    mostOpen,
    moving: worthMoving,
    opening: worthMoving,
    sharing: 0,
    alone: new Uint8Array(net.rooms.length),
    together: new Uint8Array(net.rooms.length).fill(together),
  }
  return dispatch(decoder, rule, newGenes(net)) ? planFrom(decoder) : undefined
}
