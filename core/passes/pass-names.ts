import type { SurfaceClass } from '../project/vocabulary.ts'
import type { Operation, Step } from '../specification/types.ts'
import type { PassKind } from './pass-types.ts'
import { partOf } from './places.ts'

/** What the name of one pass is made from. */
export interface Named {
  readonly kind: PassKind
  /** 1, 2, 3 for coats; 0 otherwise. */
  readonly coat: number
  /** How many coats its part of the room set gets. */
  readonly coats: number
  readonly steps: readonly Step[]
  /** Whether the pass is one of several that share a place. */
  readonly isPart: boolean
  /** Classes of all steps of its place. */
  readonly woodwork: ReadonlySet<SurfaceClass>
}

const classNames: Readonly<Record<SurfaceClass, string>> = {
  ceiling: 'ceiling',
  walls: 'walls',
  wainscot: 'wainscot',
  trim: 'trim',
  doors: 'doors',
  sash: 'windows',
  stairs: 'stairs',
  radiators: 'radiators',
  builtWork: 'built work',
}
const ordinals = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth']
const partNames = { ceiling: 'Ceiling', woodwork: 'Woodwork', walls: 'Walls', stairs: 'Stairs' } as const

/** In the words of the trade: `Woodwork, second coat: windows, doors`. */
export function passName(named: Named): string {
  switch (named.kind) {
    case 'setUp':
      return 'Set up: cover, take off, dust down'
    case 'putBack':
      return 'Put back, clean up, look over'
    case 'repair':
    case 'slow':
      return sentence(doings(named))
    case 'sand':
      return sentence([`sand and vacuum ${list(sanded(named))}`])
    case 'prime':
      return sentence(primed(named))
    default:
      return coatName(named, named.kind)
  }
}

function coatName(named: Named, part: keyof typeof partNames): string {
  const coated = named.steps.filter(({ operation }) => operation === 'coat')
  const classes = classesOf(coated)
  const only = part === 'woodwork' && classes.length === 1 ? classes[0] : undefined
  const whole = part !== 'woodwork' || classes.length === named.woodwork.size
  const base = only !== undefined && !named.isPart ? capital(classNames[only]) : partNames[part]
  const coat = named.coats > 1 ? `, ${ordinals[named.coat] ?? `${named.coat}th`} coat` : ''
  return `${base}${coat}${named.isPart && !whole ? `: ${classes.map((each) => classNames[each]).join(', ')}` : ''}`
}

const doingWords: Partial<Readonly<Record<Operation, string>>> = {
  wash: 'wash',
  washMildew: 'wash off mildew on',
  scrape: 'scrape',
  stripWallpaper: 'strip wallpaper from',
  washOffSize: 'wash paste off',
  washOffCalcimine: 'wash calcimine off',
  openCrack: 'open cracks in',
  driveFastener: 'drive fasteners in',
  reattachPlaster: 'fasten plaster of',
  fill: 'fill',
  skim: 'skim',
  puttySash: 'putty',
  freeSash: 'free',
  caulk: 'caulk',
  treatRust: 'treat rust on',
  sand: 'sand',
  sandFill: 'sand filler on',
  sandPatch: 'sand patches of',
  prime: 'prime',
  spotPrime: 'spot-prime',
  sealChalk: 'seal',
  sealBare: 'seal',
  blockStain: 'block stains on',
}

/** Up to three things that are done, each with where. */
function doings({ steps }: Named): readonly string[] {
  const byDoing = new Map<string, Step[]>()
  for (const step of steps) {
    const word = doingWords[step.operation]
    if (word !== undefined) byDoing.set(word, [...(byDoing.get(word) ?? []), step])
  }
  const all = [...byDoing].map(([word, list_]) => ({ word, where: list(names(list_)) }))
  const shown = all.slice(0, 3)
  const wheres = new Set(shown.map(({ where }) => where))
  if (wheres.size === 1)
    return [`${list(shown.map(({ word }) => bare(word, shown.length)))} ${shown[0]?.where ?? ''}`]
  return shown.map(({ word, where }) => `${word} ${where}`)
}

function bare(word: string, many: number): string {
  return many > 1 ? word : word
}

function sanded(named: Named): readonly string[] {
  const wood = named.steps.filter((step) => step.operation === 'sand' && isWoodwork(step))
  const broad = named.steps.filter((step) => step.operation === 'sand' && !isWoodwork(step))
  const patches = named.steps.some(({ operation }) => operation === 'sandFill' || operation === 'sandPatch')
  const found = [...woodworkNames(named, wood), ...names(broad), ...(patches ? ['patches'] : [])]
  return found.length === 0 ? ['the room'] : found
}

function primed(named: Named): readonly string[] {
  const of = (...operations: readonly Operation[]) =>
    named.steps.filter(({ operation }) => operations.includes(operation))
  const sealed = of('sealChalk', 'sealBare')
  const whole = of('prime')
  const wood = whole.filter(isWoodwork)
  const broad = whole.filter((step) => !isWoodwork(step))
  const patches = of('spotPrime').length > 0 ? ['patches'] : []
  const stains = of('blockStain').length > 0 ? ['block stains'] : []
  const radiators = of('coat').length > 0 ? ['coat radiators'] : []
  const prime = [...woodworkNames(named, wood), ...names(broad), ...patches]
  return [
    ...(sealed.length > 0 ? [`seal ${list(names(sealed))}`] : []),
    ...stains,
    ...(prime.length > 0 ? [`prime ${list(prime)}`] : []),
    ...radiators,
  ]
}

/** `woodwork` where all of it is meant. */
function woodworkNames(named: Named, steps: readonly Step[]): readonly string[] {
  const classes = classesOf(steps)
  return classes.length > 1 && !named.isPart ? ['woodwork'] : classes.map((each) => classNames[each])
}

function isWoodwork({ surfaceClass }: Step): boolean {
  return surfaceClass !== null && partOf(surfaceClass) === 'woodwork'
}

function names(steps: readonly Step[]): readonly string[] {
  const wood = classesOf(steps.filter(isWoodwork))
  const broad = classesOf(steps.filter((step) => !isWoodwork(step))).map((each) => classNames[each])
  return [...broad, ...(wood.length > 2 ? ['woodwork'] : wood.map((each) => classNames[each]))]
}

function classesOf(steps: readonly Step[]): readonly SurfaceClass[] {
  return [...new Set(steps.flatMap(({ surfaceClass }) => surfaceClass ?? []))]
}

function list(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

function sentence(parts: readonly string[]): string {
  return capital(parts.join('; ').trim())
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1)
}
