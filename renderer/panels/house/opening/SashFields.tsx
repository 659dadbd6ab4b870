import type { Sash } from '../../../../core/project/sketch-records.ts'
import { sashOperations } from '../../../../core/project/vocabulary.ts'
import { firstOpenings } from '../../../../core/sketch/opening-templates.ts'
import type { Length } from '../../../../core/units/length.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { wholeNumber } from '../../parts/entries.ts'
import { Tick } from '../../parts/Tick.tsx'
import { LengthField } from '../LengthField.tsx'
import { sashWords } from '../opening-words.ts'
import type { OpeningPartProps } from './opening-part.ts'

const members: readonly (readonly [
  keyof Sash & ('stile' | 'topRail' | 'meetingRail' | 'bottomRail' | 'muntin' | 'thickness'),
  string,
])[] = [
  ['stile', 'Stile'],
  ['topRail', 'Top rail'],
  ['meetingRail', 'Meeting rail'],
  ['bottomRail', 'Bottom rail'],
  ['muntin', 'Muntin'],
  ['thickness', 'Thickness'],
]

export function SashFields({ opening, set }: OpeningPartProps) {
  const { sash } = opening
  const put = (change: Partial<Sash>) => sash !== null && set({ sash: { ...sash, ...change } })
  return (
    <section className="block">
      <h3>Sash</h3>
      <Tick isOn={sash !== null} onChange={(isOn) => set({ sash: isOn ? firstOpenings.window.sash : null })}>
        Wood sash to paint
      </Tick>
      {sash === null ? null : (
        <div className="field-grid">
          <Choice
            label="Works as"
            options={optionsOf(sashOperations, sashWords)}
            chosen={sash.operation}
            onChoose={(operation) => put({ operation })}
          />
          <EntryField
            label="Units side by side"
            shown={String(sash.units)}
            read={wholeNumber(1, 12)}
            onCommit={(units) => put({ units })}
            width="short"
          />
          <EntryField
            label="Lights across, each sash"
            shown={String(sash.lightsAcross)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsAcross) => put({ lightsAcross })}
            width="short"
          />
          <EntryField
            label="Lights down, each sash"
            shown={String(sash.lightsDown)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsDown) => put({ lightsDown })}
            width="short"
          />
          {members.map(([member, label]) => (
            <LengthField
              key={member}
              label={label}
              length={sash[member]}
              onCommit={(length: Length) => put({ [member]: length })}
              isSmall
            />
          ))}
        </div>
      )}
    </section>
  )
}

export function StoolFields({ opening, set }: OpeningPartProps) {
  const { stool } = opening
  return (
    <section className="block">
      <h3>Stool and apron</h3>
      <Tick
        isOn={stool !== null}
        onChange={(isOn) => set({ stool: isOn ? firstOpenings.window.stool : null })}
      >
        A stool under the sash
      </Tick>
      {stool === null ? null : (
        <div className="field-grid">
          <LengthField
            label="Stool depth"
            length={stool.depth}
            onCommit={(depth) => set({ stool: { ...stool, depth } })}
            isSmall
          />
          <LengthField
            label="Stool thickness"
            length={stool.thickness}
            onCommit={(thickness) => set({ stool: { ...stool, thickness } })}
            isSmall
          />
          <LengthField
            label="Apron height"
            length={stool.apron}
            onCommit={(apron) => set({ stool: { ...stool, apron } })}
            isSmall
          />
        </div>
      )}
    </section>
  )
}
