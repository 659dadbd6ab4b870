import type { GirthPolicy } from '../project/job.ts'
import { type Area, areaFromSquareUnits, zeroArea } from '../units/area.ts'
import { inches, millimetres } from '../units/length.ts'
import type { PolicySource } from './opening-policies.ts'

export const girthPolicySources: Readonly<Record<GirthPolicy, PolicySource>> = {
  exactGirth: {
    rule: 'Narrow work is its length times its girth.',
    source: 'geometry',
  },
  sixTwelveInch: {
    rule: 'A girth up to 6 in counts as 6 in, up to 12 in as 12 in; more is measured by its area. The sources leave exactly 6 in open: it counts as 6 in.',
    source: '"Measuring Painter\'s Work" (How-To, 19th c.); An Old Hand, Hints for Painters',
  },
  nineInchByLength: {
    rule: 'Work up to 9 in wide is counted by its length and has no area.',
    source: 'Builder-Mechanic, "Measurement of Painters\' Work"',
  },
  threeHundredMillimetre: {
    rule: 'Work up to 300 mm wide is counted by its length and has no area.',
    source: 'SMM7-era teaching',
  },
}

const sixInches = inches(6)
const twelveInches = inches(12)
const nineInches = inches(9)
const threeHundredMillimetres = millimetres(300)

/** Narrow work under a policy: its area, or nothing where it is counted by its length instead. */
interface NarrowWork {
  readonly area: Area
  readonly byLength: boolean
}

/** `girth` and `length` in length units. */
export function narrowWork(policy: GirthPolicy, girth: number, length: number): NarrowWork {
  switch (policy) {
    case 'exactGirth':
      return byArea(girth, length)
    case 'sixTwelveInch':
      return byArea(girth <= sixInches ? sixInches : Math.max(girth, twelveInches), length)
    case 'nineInchByLength':
      return girth <= nineInches ? countedByLength : byArea(girth, length)
    case 'threeHundredMillimetre':
      return girth <= threeHundredMillimetres ? countedByLength : byArea(girth, length)
  }
}

const countedByLength: NarrowWork = { area: zeroArea, byLength: true }

function byArea(girth: number, length: number): NarrowWork {
  return { area: areaFromSquareUnits(girth * length), byLength: false }
}
