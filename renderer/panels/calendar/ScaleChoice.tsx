import { Button, Slider, SliderThumb, SliderTrack } from 'react-aria-components'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Scale } from './plan-look.ts'

const usualScale = 30
/** Where the slider stands while the whole job is shown. */
const narrowest = 10

/** Kept while the page is open, so that another station or tab does not change it. */
const scaleStore = createStore<{ readonly scale: Scale }>(() => ({ scale: 'whole' }))

export function useScale(): readonly [Scale, (scale: Scale) => void] {
  return [useStore(scaleStore, (state) => state.scale), (scale) => scaleStore.setState({ scale })]
}

/** How wide an hour is drawn, or everything in the width there is. */
export function ScaleChoice(props: { readonly scale: Scale; readonly onScale: (scale: Scale) => void }) {
  const { scale, onScale } = props
  return (
    <span className="zoom">
      <Button
        className="plain-button"
        aria-pressed={scale === 'whole'}
        onPress={() => onScale(scale === 'whole' ? usualScale : 'whole')}
      >
        Whole job
      </Button>
      <Slider
        className="zoom-slider"
        aria-label="Width of an hour"
        minValue={narrowest}
        maxValue={90}
        step={4}
        value={typeof scale === 'number' ? scale : narrowest}
        onChange={(value) => onScale(Number(value))}
      >
        <SliderTrack className="zoom-track">
          <SliderThumb className="zoom-thumb" />
        </SliderTrack>
      </Slider>
    </span>
  )
}

/** The house on a day in the place of rows, and back. */
export function HouseButton(props: { readonly scale: Scale; readonly onScale: (scale: Scale) => void }) {
  const isHouse = props.scale === 'house'
  return (
    <Button
      className="plain-button"
      aria-pressed={isHouse}
      onPress={() => props.onScale(isHouse ? 'whole' : 'house')}
    >
      House on a day
    </Button>
  )
}
