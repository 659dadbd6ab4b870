import type { Job } from '../../../core/project/job.ts'
import type { OpeningPart, SurfaceRef, WallZone } from '../../../core/project/surface-ref.ts'
import { wallLetter } from '../../../core/project/walls.ts'
import { openingWords } from '../../canvas/tools/opening.ts'
import { capital } from '../parts/words.ts'
import { trimWords } from './TrimFields.tsx'

const partWords: Readonly<Record<OpeningPart, string>> = {
  casing: 'casing',
  jamb: 'jamb',
  slab: 'leaf',
  sash: 'sash',
  stool: 'stool and apron',
}
const zoneWords: Readonly<Record<WallZone, string>> = {
  whole: '',
  lower: ', below the rail',
  upper: ', above the rail',
}

/** A surface as it is named on the screen: `Wall B, above the rail`, `Window 3: sash`. */
export function surfaceTitle(job: Job, surface: SurfaceRef): string {
  switch (surface.kind) {
    case 'wall': {
      const index =
        job.rooms[surface.roomId]?.corners.findIndex((corner) => corner.wallId === surface.wallId) ?? 0
      return `Wall ${wallLetter(index)}${zoneWords[surface.zone]}`
    }
    case 'ceiling':
      return 'Ceiling'
    case 'floor':
      return 'Floor'
    case 'trim':
      return trimWords[job.trimRuns[surface.trimRunId]?.kind ?? 'baseboard']
    case 'opening': {
      const opening = job.openings[surface.openingId]
      const name = opening === undefined ? 'Opening' : opening.name || capital(openingWords[opening.kind])
      return `${name}: ${partWords[surface.part]}`
    }
    case 'built':
      return job.builtItems[surface.builtItemId]?.name ?? 'Built work'
  }
}
