import { records } from '../../core/project/job.ts'
import { jobStore, viewStore } from '../state/app.ts'

/** What is looked at may go by an undo or by the edits of another window: the eye then rests on what is there. Answers how to stop. */
export function forgetRemoved(): () => void {
  return jobStore.store.subscribe(({ job }, before) => {
    if (job === null || job === before.job) return
    const { storeyId, roomId } = viewStore.getState()
    if (storeyId !== null && job.storeys[storeyId] === undefined) {
      viewStore.setState({ storeyId: records(job.storeys)[0]?.id ?? null, selectedIds: [] })
    }
    if (roomId !== null && job.rooms[roomId] === undefined) {
      viewStore.setState({ roomId: null, selectedIds: [], surfaceKey: null })
    }
  })
}
