import { useState } from 'react'
import { type SurfaceClass, surfaceClasses } from '../../../../core/project/vocabulary.ts'
import {
  classesOfPicked,
  type Picked,
  type PickedScope,
  scopesOfPicked,
} from '../../../../core/sketch/many/picked.ts'
import { surfaceClassWords } from '../../../../core/specification/trade-words.ts'
import { useTakeoff } from '../../../state/derived.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'

/** What is spoken of first: the walls of rooms, the sash of windows, the leaves of doors. */
const usualFirst: readonly SurfaceClass[] = ['walls', 'sash', 'doors']

/** Which class of surfaces of what is picked is spoken of, and where it is said. */
export function ClassOfMany(props: {
  readonly picked: Picked
  readonly page: (places: readonly PickedScope[], surfaceClass: SurfaceClass) => React.ReactNode
}) {
  const { surfaces } = useTakeoff()
  const present = classesOfPicked(props.picked, surfaces)
  const classes = surfaceClasses.filter((each) => present.has(each))
  const [chosen, setChosen] = useState<SurfaceClass | null>(null)
  const first = usualFirst.find((each) => present.has(each)) ?? classes[0]
  const surfaceClass = chosen !== null && present.has(chosen) ? chosen : first
  if (surfaceClass === undefined) return <p className="quiet">There is no surface to paint on these.</p>
  return (
    <>
      <Choice
        label="On"
        options={optionsOf(classes, surfaceClassWords)}
        chosen={surfaceClass}
        onChoose={setChosen}
      />
      {props.page(scopesOfPicked(props.picked, surfaces, surfaceClass), surfaceClass)}
    </>
  )
}
