import { useEffect, useState } from 'react'
import { Image as KonvaImage } from 'react-konva'
import type { Underlay } from '../../core/project/sketch-records.ts'
import { unitsPerMillimetre } from '../../core/units/length.ts'
import { usePicture } from '../state/pictures.ts'
import { toScreen, type View } from './view.ts'

const opacities: Readonly<Record<Underlay['strength'], number>> = { faint: 0.25, middle: 0.5, strong: 0.85 }

/** The photo or scan of a plan that rooms are traced on. */
export function UnderlayDrawing({ underlay, view }: { readonly underlay: Underlay; readonly view: View }) {
  const image = useImage(underlay.picture)
  if (image === null || !underlay.isShown) return null
  const { left, top } = toScreen(view, underlay)
  return (
    <KonvaImage
      image={image}
      x={left}
      y={top}
      width={underlay.width * underlay.mmPerPixel * unitsPerMillimetre * view.scale}
      height={underlay.height * underlay.mmPerPixel * unitsPerMillimetre * view.scale}
      rotation={underlay.turnDegrees}
      opacity={opacities[underlay.strength]}
      listening={false}
    />
  )
}

/** Null until it is decoded, and where it is not in the book. */
function useImage(hash: string): HTMLImageElement | null {
  const read = usePicture(hash)
  const address = read?.ok ? read.value : null
  const [image, setImage] = useState<HTMLImageElement | null>(null)
  useEffect(() => {
    if (address === null) return setImage(null)
    let isWanted = true
    const next = new Image()
    next.src = address
    void next.decode().then(
      () => isWanted && setImage(next),
      () => isWanted && setImage(null),
    )
    return () => {
      isWanted = false
    }
  }, [address])
  return image
}
