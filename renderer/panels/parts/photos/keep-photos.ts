import { photoSides } from '../../../../core/pictures/picture-bounds.ts'
import type { Photo } from '../../../../core/project/photo-records.ts'
import { problem } from '../../../../core/project/problem.ts'
import type { PhotoStage } from '../../../../core/project/vocabulary.ts'
import type { SketchCommand } from '../../../../core/sketch/commands.ts'
import { jobStore } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { takePicture } from '../../../state/pictures.ts'
import { askToday } from '../../../state/planner-now.ts'
import { command } from '../edits.ts'

/** Takes files as photos of a room or a finding, all as one action; those that cannot be read are named with the reason. */
export async function keepPhotos(files: readonly File[], of: Photo['of'], stage: PhotoStage): Promise<void> {
  const today = await askToday()
  const commands: SketchCommand[] = []
  const refused: string[] = []
  for (const file of files) {
    const taken = await takePicture(file, [photoSides.large, photoSides.small])
    if (!taken.ok) {
      refused.push(`${file.name || 'The picture'}: ${taken.problem.sentence}`)
      continue
    }
    const [large, small] = taken.value
    if (large === undefined || small === undefined) continue
    const id = newId('photo')
    const record: Photo = { id, of, picture: large.hash, small: small.hash, stage, note: '', keptOn: today }
    commands.push({ kind: 'putRecord', collection: 'photos', record })
  }
  const action = commands.length === 1 ? 'Add a photo' : `Add ${commands.length} photos`
  if (commands.length > 0 && !command(action, ...commands)) return
  if (refused.length > 0) jobStore.refuse(problem('notValid', refusedWords(refused)))
}

/** So many reasons are said; the rest is counted. */
const mostSaid = 3

function refusedWords(refused: readonly string[]): string {
  const more = refused.length - mostSaid
  return `${refused.slice(0, mostSaid).join(' ')}${more > 0 ? ` And ${more} more.` : ''}`
}

/** The picture files among what was dropped, pasted or chosen. */
export function filesIn(list: FileList | null | undefined): readonly File[] {
  return [...(list ?? [])]
}
