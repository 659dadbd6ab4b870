import { type Job, records } from '../../../../core/project/job.ts'
import { roomUses } from '../../../../core/project/vocabulary.ts'
import type { PickPlace, pickedOf } from '../../../../core/sketch/many/picked.ts'
import type { ChoiceOption } from '../../parts/Choice.tsx'
import { useWords } from '../room-choices.ts'

/** Where things can be picked: the house, the rooms that are picked, each floor, and each use that a room has. */
export function pickPlaces(job: Job, picked: number): readonly ChoiceOption<string>[] {
  const uses = new Set(records(job.rooms).map(({ use }) => use))
  return [
    { id: 'house', label: 'Whole house' },
    ...(picked > 0
      ? [{ id: 'picked', label: picked === 1 ? 'The picked room' : `The ${picked} picked rooms` }]
      : []),
    ...records(job.storeys).map(({ id, name }) => ({ id: `floor ${id}`, label: name })),
    ...roomUses
      .filter((use) => uses.has(use))
      .map((use) => ({ id: `use ${use}`, label: `${useWords[use]}: all of them` })),
  ]
}

/** The place behind the id of a choice; the whole house for an id that is none. */
export function pickPlaceOf(job: Job, id: string, picked: ReturnType<typeof pickedOf>['rooms']): PickPlace {
  if (id === 'picked') return { roomIds: picked.map((room) => room.id) }
  const storey = records(job.storeys).find((each) => id === `floor ${each.id}`)
  if (storey !== undefined) return { storeyId: storey.id }
  const use = roomUses.find((each) => id === `use ${each}`)
  return use === undefined ? null : { use }
}
