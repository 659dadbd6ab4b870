import type { StoreyId } from '../../../core/project/sketch-records.ts'
import { fitStorey } from '../../canvas/sketch-input.ts'
import { sketchStore } from '../../canvas/sketch-store.ts'
import { zoomAt } from '../../canvas/view.ts'
import { viewStore } from '../../state/app.ts'

export function zoomBy(factor: number): void {
  const { view, size } = sketchStore.getState()
  sketchStore.setState({ view: zoomAt(view, { left: size.width / 2, top: size.height / 2 }, factor) })
}

export function showStorey(storeyId: StoreyId): void {
  viewStore.setState({ storeyId, selectedIds: [], roomId: null })
  fitStorey()
}
