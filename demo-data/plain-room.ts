import type { Job } from '../core/project/job.ts'
import { door, singleRoom, window } from './single-room.ts'

/** 12 ft x 10 ft. Its figures are worked by hand in plain-room.md. */
export function plainRoom(): Job {
  return singleRoom(
    'One plain room',
    'Spare bedroom',
    [
      ['north', 0, 0, 'outside'],
      ['east', 144, 0],
      ['south', 144, 120],
      ['west', 0, 120],
    ],
    [
      { ...door, room: 'room', wall: 'south', at: 12 },
      { ...window, room: 'room', wall: 'north', at: 54 },
    ],
  )
}
