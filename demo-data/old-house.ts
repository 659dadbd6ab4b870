import { emptyJob, tableOf } from '../core/project/empty-job.ts'
import type { Job } from '../core/project/job.ts'
import type { Storey, StoreyId } from '../core/project/sketch-records.ts'
import { finishes } from './old-house/finishes.ts'
import { builtItems, trimRuns } from './old-house/joinery.ts'
import { openings } from './old-house/openings.ts'
import { rooms } from './old-house/rooms.ts'
import { conditions, existingCoatsFound, keptItems } from './old-house/survey.ts'
import { demoShop } from './shop.ts'

const storeys: readonly Storey[] = [
  { id: 'ground' as StoreyId, name: 'First floor', level: 0 },
  { id: 'upper' as StoreyId, name: 'Second floor', level: 1 },
]

/** An invented house of 1926 on two storeys, lived in while it is painted. */
export function oldHouse(): Job {
  const job = emptyJob(
    {
      title: 'The old house on the corner',
      client: 'The family on the corner',
      phones: '555 0101 home\n555 0102 at work',
      mail: 'corner@coatwright.example',
      site: '1 Example Street',
      access: 'The back door is open from 7:30; the dog stays in the kitchen.',
      yearBuilt: 1926,
      occupied: true,
      id: 'demo-old-house' as never,
      childrenOrPets: true,
      startsOn: '2027-03-29',
      planFor: 'balanced',
      timeZone: 'America/Chicago',
      unitSystem: 'imperial',
      paper: 'letter',
      isDemonstration: true,
      isPutAway: false,
      proposalNumber: null,
      air: {
        temperatureC: 19,
        relativeHumidityPercent: 55,
        outdoorTemperatureC: 0,
        surfaceTemperatureC: null,
      },
    },
    demoShop,
    storeys,
  )
  return {
    ...job,
    rooms: tableOf(rooms),
    openings: tableOf(openings),
    trimRuns: tableOf(trimRuns),
    builtItems: tableOf(builtItems),
    keptItems: tableOf(keptItems),
    existing: tableOf(existingCoatsFound),
    conditions: tableOf(conditions),
    finishes: tableOf(finishes),
  }
}
