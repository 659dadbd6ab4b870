import type { Casing } from '../../../../core/project/sketch-records.ts'
import { inches } from '../../../../core/units/length.ts'
import { Choice } from '../../parts/Choice.tsx'
import { Tick } from '../../parts/Tick.tsx'
import { LengthField } from '../LengthField.tsx'
import type { OpeningPartProps } from './opening-part.ts'

export function Casings({ opening, set }: OpeningPartProps) {
  return (
    <section className="block">
      <h3>Casing</h3>
      <CasingFields
        label="On this side"
        casing={opening.casingNear}
        onSet={(casingNear) => set({ casingNear })}
      />
      {opening.far === null ? null : (
        <CasingFields
          label="On the far side"
          casing={opening.casingFar}
          onSet={(casingFar) => set({ casingFar })}
        />
      )}
    </section>
  )
}

const firstCasing: Casing = { width: inches(4.5), girth: inches(6), style: 'mitred', profiled: true }

function CasingFields(props: {
  readonly label: string
  readonly casing: Casing | null
  readonly onSet: (casing: Casing | null) => void
}) {
  const { casing, onSet } = props
  return (
    <>
      <Tick isOn={casing !== null} onChange={(isOn) => onSet(isOn ? firstCasing : null)}>
        {props.label}
      </Tick>
      {casing === null ? null : (
        <div className="field-grid">
          <LengthField
            label="Face width"
            length={casing.width}
            onCommit={(width) => onSet({ ...casing, width })}
            isSmall
          />
          <LengthField
            label="Girth to paint"
            length={casing.girth}
            onCommit={(girth) => onSet({ ...casing, girth })}
            isSmall
          />
          <Choice
            label="Made with"
            options={[
              { id: 'mitred', label: 'Mitered corners' },
              { id: 'plinthAndCornerBlocks', label: 'Plinth and corner blocks' },
            ]}
            chosen={casing.style}
            onChoose={(style) => onSet({ ...casing, style })}
          />
          <Tick isOn={casing.profiled} onChange={(profiled) => onSet({ ...casing, profiled })}>
            Profiled
          </Tick>
        </div>
      )}
    </>
  )
}

export function Jamb({ opening, set }: OpeningPartProps) {
  return (
    <section className="block">
      <h3>Jamb or reveal</h3>
      <div className="field-grid">
        <LengthField
          label="Depth to paint"
          length={opening.jambDepth}
          onCommit={(jambDepth) => set({ jambDepth })}
          isSmall
        />
        <Choice
          label="Painted as"
          options={[
            { id: 'wood', label: 'Wood, with the trim' },
            { id: 'wall', label: 'Plaster, with the wall' },
          ]}
          chosen={opening.jambOf}
          onChoose={(jambOf) => set({ jambOf })}
        />
      </div>
    </section>
  )
}
