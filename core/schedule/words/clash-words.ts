import type { Clash } from '../explain.ts'

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
        sentence: `the waits between these steps contradict one another: ${chain(clash.tasks)}.`,
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
    case 'roomBackTooEarly': {
      const sentence = `${words.room(clash.room)} cannot be given back in time: ${chain(clash.tasks)} come first. Promise a later moment.`
      return { sentence, ids: [clash.room, ...clash.tasks] }
    }
    case 'noWorkingTime':
      return {
        sentence: `there is no working time for the last of these: ${chain(clash.tasks)}.`,
        ids: clash.tasks,
      }
    case 'pinnedCannotHold':
      return {
        sentence: `${words.task(clash.task)} cannot be held where it is pinned. Move or drop the pin.`,
        ids: [clash.task],
      }
    case 'stuckMost':
      return {
        sentence: `most attempts got stuck at ${words.task(clash.task)} (${stuckWords[clash.because]}).`,
        ids: [clash.task],
      }
  }
}

const stuckWords = {
  noFreePlace: 'no free place in the calendar',
  waitTooLong: 'a wait would become too long',
  roomsOutOfUse: 'too many rooms would be out of use',
} as const
