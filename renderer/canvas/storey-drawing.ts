import { useMemo } from 'react'
import type { Job } from '../../core/project/job.ts'
import { useView } from '../state/app.ts'
import { drawStorey } from './drawing/draw-storey.ts'
import type { Pen } from './drawing/pen.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { useSketch } from './sketch-store.ts'
import { useUnderlayImage } from './underlay-image.ts'

interface DraftedStorey {
  /** The job as drafted. */
  readonly job: Job
  readonly colors: DrawingColors
  /** Rooms as they cannot be. */
  readonly refusedIds: readonly string[]
}

/** How one storey is drawn, with what is picked and lit in it. */
export function useStoreyDrawing({ job, colors, refusedIds }: DraftedStorey): (pen: Pen) => void {
  const storeyId = useView((state) => state.storeyId) ?? ''
  const selectedIds = useView((state) => state.selectedIds)
  const { view, size, litIds, showsGrid } = useSketch((state) => state)
  const underlayImage = useUnderlayImage(job.storeys[storeyId]?.underlay?.picture ?? null)
  return useMemo(() => {
    const look = {
      job,
      storeyId,
      system: job.header.unitSystem,
      view,
      size,
      colors,
      showsGrid,
      underlayImage,
      selected: new Set(selectedIds),
      lit: new Set(litIds),
      refused: new Set(refusedIds),
    }
    return (pen: Pen) => drawStorey(pen, look)
  }, [job, storeyId, view, size, colors, showsGrid, underlayImage, selectedIds, litIds, refusedIds])
}
