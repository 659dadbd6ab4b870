import { Button } from 'react-aria-components'
import type { Job, JobHeader } from '../../../core/project/job.ts'
import { dewPoint } from '../../../core/specification/air.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { Callout, QuietNote } from '../parts/Callout.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { changeHeader } from '../parts/edits.ts'
import { decimalNumber, orNothing } from '../parts/entries.ts'
import { degrees, degreesEntry } from './degrees.ts'

type Air = JobHeader['air']

/** How warm and damp it is where the work is, the dew point that follows, and where work must wait for it. */
export function AirTab({ job, specification }: { readonly job: Job; readonly specification: Specification }) {
  const { air, unitSystem } = job.header
  const isMetric = unitSystem === 'metric'
  const change = (changes: Partial<Air>) =>
    changeHeader('Change the air on site', { air: { ...air, ...changes } })
  const notices = specification.notices.filter((notice) => notice.kind === 'dewPoint')
  const dew = dewPoint(air.temperatureC, air.relativeHumidityPercent)
  return (
    <div className="scroll tab-pad air">
      <p>
        A surface colder than the air can be wet without looking it: paint is held where the surface is less
        than 3 °C (5 °F) above the dew point. Measure the coldest surface when you can; left empty, it is
        estimated from the space behind.
      </p>
      <div className="field-grid">
        <Temperature
          label="Air in the room"
          value={air.temperatureC}
          isMetric={isMetric}
          range={[-40, 60]}
          onChange={(temperatureC) => change({ temperatureC })}
        />
        <EntryField
          label="Relative humidity"
          width="short"
          unit="%"
          shown={String(air.relativeHumidityPercent)}
          read={decimalNumber(1, 100)}
          onCommit={(relativeHumidityPercent) => change({ relativeHumidityPercent })}
        />
        <Temperature
          label="Outdoors"
          value={air.outdoorTemperatureC}
          isMetric={isMetric}
          range={[-60, 60]}
          onChange={(outdoorTemperatureC) => change({ outdoorTemperatureC })}
        />
        <EntryField
          label="Coldest surface, measured"
          width="short"
          unit={isMetric ? '°C' : '°F'}
          shown={air.surfaceTemperatureC === null ? '' : degrees(air.surfaceTemperatureC, isMetric)}
          read={orNothing<number>(degreesEntry([-60, 80], isMetric))}
          hint="empty is estimated"
          onCommit={(surfaceTemperatureC) => change({ surfaceTemperatureC })}
        />
      </div>
      <dl className="side-by-side">
        <div>
          <dt>Dew point of this air</dt>
          <dd>
            {degrees(dew, isMetric)} {isMetric ? '°C' : '°F'}
          </dd>
        </div>
        <div>
          <dt>Surfaces must be at least</dt>
          <dd>
            {degrees(dew + 3, isMetric)} {isMetric ? '°C' : '°F'}
          </dd>
        </div>
      </dl>
      {notices.length === 0 ? (
        <Callout kind="done" title="No hold">
          No surface of this job comes within the margin of the dew point as things are entered here. Look
          again when the weather turns.
        </Callout>
      ) : (
        notices.map((notice) => (
          <QuietNote
            key={notice.sentence}
            kind={notice.hold ? 'stop' : 'note'}
            title={notice.hold ? 'Hold' : 'Note'}
            words={notice.sentence}
            source={notice.source}
          />
        ))
      )}
      {air.surfaceTemperatureC === null ? null : (
        <div className="button-row">
          <Button className="plain-button" onPress={() => change({ surfaceTemperatureC: null })}>
            Estimate the surface again
          </Button>
        </div>
      )}
    </div>
  )
}

function Temperature(props: {
  readonly label: string
  readonly value: number
  readonly isMetric: boolean
  readonly range: readonly [number, number]
  readonly onChange: (celsius: number) => void
}) {
  return (
    <EntryField
      label={props.label}
      width="short"
      unit={props.isMetric ? '°C' : '°F'}
      shown={degrees(props.value, props.isMetric)}
      read={degreesEntry(props.range, props.isMetric)}
      onCommit={props.onChange}
    />
  )
}
