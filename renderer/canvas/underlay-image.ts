import { useEffect, useState } from 'react'
import { pictureAddress } from '../state/pictures.ts'

/** The photo or scan that rooms are traced on, to be drawn. Null until it is decoded, and where it is not in the book. */
export function useUnderlayImage(hash: string | null): HTMLImageElement | null {
  const [image, setImage] = useState<HTMLImageElement | null>(null)
  useEffect(() => {
    let isWanted = true
    const show = (next: HTMLImageElement | null) => {
      if (isWanted) setImage(next)
    }
    if (hash === null) show(null)
    else decoded(hash).then(show, () => show(null))
    return () => {
      isWanted = false
    }
  }, [hash])
  return image
}

async function decoded(hash: string): Promise<HTMLImageElement | null> {
  const address = await pictureAddress(hash)
  if (!address.ok) return null
  const image = new Image()
  image.src = address.value
  await image.decode()
  return image
}
