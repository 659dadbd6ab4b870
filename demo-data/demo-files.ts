import { writeJobFile } from '../core/project/job-file.ts'
import { jobFileJsonSchema } from '../core/project/job-file-schema.ts'
import { layOutJson } from '../core/project/json-layout.ts'
import { lShapedRoom } from './l-shaped-room.ts'
import { oldHouse } from './old-house.ts'
import { plainRoom } from './plain-room.ts'

/** Every generated file of this folder, by name. */
export function demoFiles(): Readonly<Record<string, string>> {
  return {
    'old-house.json': writeJobFile(oldHouse()),
    'plain-room.json': writeJobFile(plainRoom()),
    'l-shaped-room.json': writeJobFile(lShapedRoom()),
    'job.schema.json': layOutJson(jobFileJsonSchema()),
  }
}
