import { useEffect, useState } from 'react'

/** The colors of tokens.css for the canvas, which does not read style sheets. */
export interface DrawingColors {
  readonly paper: string
  readonly paperRaised: string
  readonly paperSunk: string
  readonly dark: string
  readonly darkSoft: string
  readonly line: string
  readonly lineStrong: string
  readonly act: string
  readonly actSoft: string
  readonly onAct: string
  readonly wait: string
  readonly waitSoft: string
  readonly stop: string
  readonly face: string
  readonly faceDrawn: string
}

/** The system may change each of them while the page is open. */
const schemes = ['(prefers-color-scheme: dark)', '(forced-colors: active)']

/** Read again whenever the system changes its scheme. */
export function useDrawingColors(): DrawingColors {
  const [colors, setColors] = useState(readDrawingColors)
  useEffect(() => {
    const read = () => setColors(readDrawingColors())
    const queries = schemes.map((scheme) => window.matchMedia(scheme))
    for (const query of queries) query.addEventListener('change', read)
    return () => {
      for (const query of queries) query.removeEventListener('change', read)
    }
  }, [])
  return colors
}

function readDrawingColors(): DrawingColors {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string) => style.getPropertyValue(`--${name}`).trim()
  // A color of the system is a word that only an element turns into a color.
  const probe = document.body.appendChild(document.createElement('span'))
  probe.style.forcedColorAdjust = 'none'
  const color = (name: string) => {
    probe.style.color = token(name)
    return getComputedStyle(probe).color
  }
  const colors = {
    paper: color('paper'),
    paperRaised: color('paper-raised'),
    paperSunk: color('paper-sunk'),
    dark: color('dark'),
    darkSoft: color('dark-soft'),
    line: color('line'),
    lineStrong: color('line-strong'),
    act: color('act'),
    actSoft: color('act-soft'),
    onAct: color('on-act'),
    wait: color('wait'),
    waitSoft: color('wait-soft'),
    stop: color('stop'),
    face: token('face'),
    faceDrawn: token('face-drawn'),
  }
  probe.remove()
  return colors
}
