/** The colours of tokens.css for the canvas, which does not read style sheets; read once from the page. */
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
  readonly wait: string
  readonly waitSoft: string
  readonly stop: string
  readonly face: string
  readonly faceDrawn: string
}

export function readDrawingColors(): DrawingColors {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string) => style.getPropertyValue(`--${name}`).trim()
  return {
    paper: token('paper'),
    paperRaised: token('paper-raised'),
    paperSunk: token('paper-sunk'),
    dark: token('dark'),
    darkSoft: token('dark-soft'),
    line: token('line'),
    lineStrong: token('line-strong'),
    act: token('act'),
    actSoft: token('act-soft'),
    wait: token('wait'),
    waitSoft: token('wait-soft'),
    stop: token('stop'),
    face: token('face'),
    faceDrawn: token('face-drawn'),
  }
}
