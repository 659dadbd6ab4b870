import type { Clash } from '../explain-clashes.ts'

/** How tasks, rooms and people are called in the job the clash is about. */
export interface ClashWords {
  readonly task: (id: string) => string
  readonly room: (id: string) => string
  readonly person: (id: string) => string
}

/** What stands in the way of a plan, in a sentence, with the ids it is about. */
export function clashSentence(
  clash: Clash,
  words: ClashWords,
): { readonly sentence: string; readonly ids: readonly string[] } {
  const chain = (tasks: readonly string[]) => tasks.slice(0, 6).map(words.task).join(', then ')
  switch (clash.kind) {
    case 'waitsContradict':
      return {
        sentence: `the waits between these contradict one another: ${chain(clash.tasks)}.`,
        ids: clash.tasks,
      }
    case 'skillMissing': {
      const sentence = `nobody on the crew has what ${words.task(clash.task)} needs (${clash.skills.join(', ')}).`
      return { sentence, ids: [clash.task] }
    }
    case 'crewTooSmall': {
      const sentence = `${words.task(clash.task)} needs ${clash.needed} people, and there are ${clash.available}.`
      return { sentence, ids: [clash.task] }
    }
    case 'resourceTooSmall':
      return {
        sentence: `${words.task(clash.task)} needs more of ${clash.resource} than there is.`,
        ids: [clash.task],
      }
    case 'stuckMost': {
      const why = stuckWords[clash.because]
      const sentence =
        why === undefined
          ? `most attempts got stuck at ${words.task(clash.task)}.`
          : `${clash.room === null ? words.task(clash.task) : words.room(clash.room)} ${why}`
      return { sentence, ids: clash.room === null ? [clash.task] : [clash.room, clash.task] }
    }
  }
}

/** By the rule that the best attempt breaks. */
const stuckWords: Readonly<Record<string, string>> = {
  roomBack: 'cannot be given back in time by any plan tried. Promise a later moment.',
  neededDaily: 'cannot be open again in the hours it is needed every day.',
  pinned: 'cannot be held where it is pinned. Move or drop the pin.',
  crewCalendar: 'is pinned to hours in which its people are not there. Move or drop the pin.',
  minimumWait: 'cannot wait long enough for what comes before it. Move or drop the pins around it.',
  maximumWait: 'would have to wait longer than it may.',
  roomsOutOfUse: 'would be one room too many out of use on some day.',
  fumesWhileSleeping: 'would smell in the hours of sleep.',
}
