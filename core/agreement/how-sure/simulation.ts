import { type RandomStream, randomStream } from '../../schedule/random.ts'
import type { CostRisks } from './cost-risks.ts'
import { exponentialDraw } from './draws.ts'
import { factorDraw, logSpread } from './factors.ts'

/** What a cost that comes out otherwise comes from, in the order in which it is drawn. */
export const doubtSources = ['pace', 'rates', 'findings', 'coats', 'material'] as const
export type DoubtSource = (typeof doubtSources)[number]

/** Costs of a job drawn again and again: for each draw what each source adds to the planned cost, in cents. */
export interface Simulation {
  /** Draws so many more; the same draws however they are parted. */
  readonly drawMore: (count: number) => void
  /** What the draws added to the planned cost, one after the other. */
  readonly added: () => readonly number[]
  readonly addedBy: (source: DoubtSource) => readonly number[]
}

/**
 * A simulation that goes on where it stopped. The sources are drawn apart and their cents added up:
 * - pace: all hours times one lognormal factor of mean 1;
 * - rates: the hours of each rate times a factor of its own;
 * - findings: in each room, by chance, more preparation, exponential about its mean;
 * - coats: each coat is, by chance, done once more;
 * - material: all material times one factor.
 *
 * That a finding in a slow job costs more than in a quick one is left out: it is small beside the sources themselves.
 *
 * @param seed the same seed gives the same draws on every machine
 */
export function createSimulation(risks: CostRisks, seed: number): Simulation {
  const random = randomStream(seed)
  const draws = drawsOf(risks)
  const all: number[] = []
  const bySource = doubtSources.map((): number[] => [])
  return {
    drawMore: (count) => {
      for (let left = count; left > 0; left--) {
        let sum = 0
        for (const [index, source] of doubtSources.entries()) {
          const cents = draws[source](random)
          bySource[index]?.push(cents)
          sum += cents
        }
        all.push(sum)
      }
    },
    added: () => all,
    addedBy: (source) => bySource[doubtSources.indexOf(source)] ?? [],
  }
}

type Draw = (random: RandomStream) => number

function drawsOf({ labourCents, materialCents, rates, rooms, coats, spreads }: CostRisks) {
  const pace = logSpread(spreads.pacePercent / 100)
  const material = logSpread(spreads.materialPercent / 100)
  const ofRates = rates.map(({ cents, spread }) => ({ cents, spread: logSpread(spread) }))
  const [chance, size, again] = [
    spreads.findingChancePercent / 100,
    spreads.findingSizePercent / 100,
    spreads.coatAgainPercent / 100,
  ]
  return {
    pace: (random) => labourCents * (factorDraw(random, pace) - 1),
    rates: (random) => {
      let sum = 0
      for (const { cents, spread } of ofRates) sum += cents * (factorDraw(random, spread) - 1)
      return sum
    },
    findings: (random) => {
      let sum = 0
      for (const { cents } of rooms) {
        if (random() < chance) sum += cents * size * exponentialDraw(random)
      }
      return sum
    },
    coats: (random) => {
      let sum = 0
      for (const cents of coats) if (random() < again) sum += cents
      return sum
    },
    material: (random) => materialCents * (factorDraw(random, material) - 1),
  } satisfies Record<DoubtSource, Draw>
}
