import { useState } from 'react'
import { Button, Heading } from 'react-aria-components'
import { movedBy, shiftStep } from '../../../../core/sketch/underlay.ts'
import { useJob } from '../../../state/app.ts'
import { lengthText } from '../../parts/entries.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { ShiftButtons } from '../ShiftButtons.tsx'
import { ByRectangle } from './ByRectangle.tsx'
import { ByWall } from './ByWall.tsx'
import { setUnderlay, type UnderlayOf } from './put-underlay.ts'

const strengths = [
  { id: 'faint', label: 'Faint' },
  { id: 'middle', label: 'Middle' },
  { id: 'strong', label: 'Strong' },
] as const

const ways = [
  { id: 'wall', label: 'By a wall' },
  { id: 'rectangle', label: 'By a rectangle' },
] as const

/** Where and how large the picture lies, how strong it shows, and how it goes away. */
export function ScalePage(props: UnderlayOf & { readonly onDone: () => void }) {
  const { storey, underlay, onDone } = props
  const system = useJob().header.unitSystem
  const [way, setWay] = useState<(typeof ways)[number]['id']>('wall')
  const step = shiftStep(system)
  const shift = (x: number, y: number) =>
    setUnderlay('Move the picture', storey, movedBy(underlay, x * step, y * step))
  return (
    <>
      <Heading slot="title">Picture under {storey.name}</Heading>
      <OneOf label="Set its scale" options={ways} chosen={way} onChoose={setWay} />
      {way === 'wall' ? (
        <ByWall key={underlay.picture} storey={storey} underlay={underlay} />
      ) : (
        <ByRectangle key={underlay.picture} storey={storey} underlay={underlay} />
      )}
      <div className="button-row underlay-line">
        <OneOf
          label="How strong it shows"
          options={strengths}
          chosen={underlay.strength}
          onChoose={(strength) => setUnderlay('Fade the picture', storey, { ...underlay, strength })}
        />
        <div className="button-row underlay-shift">
          <span className="label">Move it by {lengthText(step, system)}</span>
          <ShiftButtons what="the picture" onShift={shift} />
        </div>
      </div>
      <div className="button-row sheet-end">
        <Button className="plain-button" onPress={onDone}>
          Done
        </Button>
        <Button
          className="plain-button remove"
          onPress={() => {
            setUnderlay('Take the picture away', storey, null)
            onDone()
          }}
        >
          Take it away
        </Button>
      </div>
    </>
  )
}
