import type { Slab } from '../../../../core/project/sketch-records.ts'
import { slabKinds } from '../../../../core/project/vocabulary.ts'
import { firstOpenings } from '../../../../core/sketch/opening-templates.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { wholeNumber } from '../../parts/entries.ts'
import { Tick } from '../../parts/Tick.tsx'
import { LengthField } from '../LengthField.tsx'
import { slabWords } from '../opening-words.ts'
import type { OpeningPartProps } from './opening-part.ts'

const sideWords = { near: 'into this room', far: 'out of this room' } as const

export function SlabFields({ opening, set }: OpeningPartProps) {
  const { slab } = opening
  const put = (change: Partial<Slab>) => slab !== null && set({ slab: { ...slab, ...change } })
  return (
    <section className="block">
      <h3>Door leaf</h3>
      <Tick isOn={slab !== null} onChange={(isOn) => set({ slab: isOn ? firstOpenings.door.slab : null })}>
        A door hangs in it
      </Tick>
      {slab === null ? null : (
        <div className="field-grid">
          <Choice
            label="Leaf"
            options={optionsOf(slabKinds, slabWords)}
            chosen={slab.kind}
            onChoose={(kind) => put({ kind })}
          />
          <LengthField
            label="Thickness"
            length={slab.thickness}
            onCommit={(thickness) => put({ thickness })}
            isSmall
          />
          <EntryField
            label="Leaves"
            shown={String(slab.leaves)}
            read={wholeNumber(1, 8)}
            onCommit={(leaves) => put({ leaves })}
            width="short"
          />
          <Choice
            label="Opens"
            options={optionsOf(['near', 'far'] as const, sideWords)}
            chosen={slab.edgesShow}
            onChoose={(edgesShow) => put({ edgesShow })}
          />
          <Tick isOn={slab.paintNear} onChange={(paintNear) => put({ paintNear })}>
            This side is painted
          </Tick>
          <Tick isOn={slab.paintFar} onChange={(paintFar) => put({ paintFar })}>
            The other side is painted
          </Tick>
        </div>
      )}
    </section>
  )
}
