import { useEffect, useState } from 'react'
import { costRisks } from '../../core/agreement/how-sure/cost-risks.ts'
import { createSimulation } from '../../core/agreement/how-sure/simulation.ts'
import { type Sureness, surenessOf } from '../../core/agreement/how-sure/sureness.ts'
import type { Estimate } from '../../core/price/estimate-types.ts'
import type { Job } from '../../core/project/job.ts'
import type { Specification } from '../../core/specification/types.ts'

/** With so many draws the share below a figure is known to about half a percent. */
const draws = 4000
/** The same draws each time, so that a price is as sure tomorrow as it is today. */
const seed = 1
/** A slice is short beside a keystroke, and nothing is drawn while somebody types on. */
const sliceMilliseconds = 6
const drawsBetweenLooks = 20
const restMilliseconds = 250

/** How sure the price is; the one before while another is drawn, null before the first. Drawn in slices, so that the page stays quick. */
export function useSureness(job: Job, specification: Specification, estimate: Estimate): Sureness | null {
  const [sure, setSure] = useState<Sureness | null>(null)
  useEffect(() => {
    let timer = window.setTimeout(begin, restMilliseconds)
    function begin() {
      const risks = costRisks(job, specification, estimate)
      const simulation = createSimulation(risks, seed)
      const go = () => {
        const until = performance.now() + sliceMilliseconds
        while (simulation.added().length < draws && performance.now() < until)
          simulation.drawMore(drawsBetweenLooks)
        if (simulation.added().length < draws) timer = window.setTimeout(go)
        else setSure(surenessOf(job.houseRules, estimate.totals, risks, simulation))
      }
      go()
    }
    return () => window.clearTimeout(timer)
  }, [job, specification, estimate])
  return sure
}
