import type { Job } from '../core/project/job.ts'
import { door, singleRoom, window } from './single-room.ts'

/** 14 ft x 12 ft with a corner of 6 ft x 5 ft cut out. Its figures are worked by hand in l-shaped-room.md. */
export function lShapedRoom(): Job {
  return singleRoom(
    'One L-shaped room',
    'Corner bedroom',
    [
      ['north', 0, 0, 'outside'],
      ['east', 168, 0, 'outside'],
      ['inner-south', 168, 84],
      ['inner-east', 96, 84],
      ['south', 96, 144],
      ['west', 0, 144],
    ],
    [
      { ...door, room: 'room', wall: 'inner-south', at: 120 },
      { ...window, room: 'room', wall: 'west', at: 48 },
    ],
  )
}
