import { useState } from 'react'
import { shiftStep } from '../../../core/sketch/underlay.ts'
import type { Length } from '../../../core/units/length.ts'
import { moveSelectedRooms } from '../../canvas/sketch-input.ts'
import { useJob } from '../../state/app.ts'
import { LengthField } from './LengthField.tsx'
import { ShiftButtons } from './ShiftButtons.tsx'

/** Moves the room exactly, by keyboard and by finger too. */
export function MoveRoom() {
  const [typed, setTyped] = useState<Length | null>(null)
  const { unitSystem } = useJob().header
  const step = typed ?? shiftStep(unitSystem)
  return (
    <div className="move-room block">
      <LengthField label="Move it by" length={step} onCommit={setTyped} />
      <span className="button-row">
        <ShiftButtons what="the room" onShift={(x, y) => moveSelectedRooms(x * step, y * step)} />
      </span>
    </div>
  )
}
