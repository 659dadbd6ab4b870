import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { bookPath } from '../../electron/handlers/program-files.ts'
import { backupFolder } from '../../electron/storage/book-files.ts'
import { backupFolderOf, helpSections } from '../../renderer/app/help/help-text.ts'
import { type KeyPlace, keyPlaces, shownKeys } from '../../renderer/app/help/key-list.ts'
import { everywhereKeys } from '../../renderer/app/keys.ts'
import { houseKeys } from '../../renderer/panels/house/house-keys.ts'
import { keyName } from '../../renderer/panels/parts/key-names.ts'
import { walkKeys } from '../../renderer/panels/walk/walk-keys.ts'
import { granted } from '../storage/books.ts'

const root = join(import.meta.dirname, '..', '..')
const readme = readFileSync(join(root, 'README.md'), 'utf8')

function keysOf(id: KeyPlace['id']): readonly string[] {
  const lines = keyPlaces.find((place) => place.id === id)?.lines ?? []
  return lines.filter((line) => line.isBuiltIn !== true).flatMap((line) => line.keys)
}

test('the list of keys for everywhere is the table the program listens by', () => {
  expect([...keysOf('everywhere')].sort()).toEqual(Object.keys(everywhereKeys).sort())
})

test('the list of keys for the sheet is the table of the House, with what is held and Escape', () => {
  const elsewhere = ['Space', 'Alt', 'Shift', 'Escape']
  expect([...keysOf('house')].sort()).toEqual([...Object.keys(houseKeys), ...elsewhere].sort())
})

test('the list of keys for the walk is the table of the Walk', () => {
  expect([...keysOf('walk')].sort()).toEqual(Object.keys(walkKeys).sort())
})

/** Files that listen to keys outside of those three tables, and the places of the list that speak of them. */
const listeners: Readonly<Record<string, readonly KeyPlace['id'][]>> = {
  'app/keys.ts': ['everywhere'],
  'panels/parts/key-names.ts': ['everywhere', 'house'],
  'panels/house/underlay/PicturePoints.tsx': ['house'],
  'panels/house/house-keys.ts': ['house'],
  'panels/house/SheetList.tsx': ['house'],
  'panels/house/tape-list/TapeList.tsx': ['fields'],
  'canvas/RefusalNote.tsx': ['drawing'],
  'canvas/sheet-pointer.ts': ['house', 'drawing'],
  'canvas/tools/opening.ts': ['house'],
  'canvas/tools/outline.ts': ['drawing'],
  'canvas/tools/pick.ts': ['house'],
  'canvas/tools/rectangle.ts': ['drawing'],
  'canvas/tools/typing.ts': ['drawing'],
  'canvas/DimensionField.tsx': ['fields'],
  'panels/walk/walk-keys.ts': ['walk'],
  'panels/parts/EntryField.tsx': ['fields'],
  'panels/parts/PickTable.tsx': ['tables'],
  'panels/parts/roving-list.ts': ['ticks'],
  'panels/calendar/LaneDrawing.tsx': ['calendar'],
  'panels/calendar/bar-drag.ts': ['calendar'],
  'panels/calendar/whole-job/RoomRows.tsx': ['calendar'],
}

const keyWords =
  /\b(?:Enter|Escape|Home|End|Page(?:Up|Down)|Delete|Backspace|Space|Arrow(?:Left|Right|Up|Down)|F\d+)\b/g

test('every file that listens to keys has its place in the list, and every key it names is there', () => {
  const listening =
    /onKey(?:Down|Up)=|addEventListener\('key|kind === 'key'|case 'key'|event\.(?:key|code)\b|\.(?:alt|ctrl|meta|shift)Key\b/
  const folder = join(root, 'renderer')
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.tsx?$/.test(name),
  )
  const missing = files.flatMap((name) => {
    const text = readFileSync(join(folder, name), 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
    if (!listening.test(text)) return []
    const places = listeners[name.replaceAll('\\', '/')]
    if (places === undefined) return [`${name} listens to keys and stands at no place of the list`]
    const listed = places.flatMap(keysOf)
    return (text.match(keyWords) ?? []).filter((key) => !listed.includes(key)).map((key) => `${name}: ${key}`)
  })
  expect(missing).toEqual([])
})

test('keys have the same name however they are pressed', () => {
  const press = (
    key: string,
    code: string,
    held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', true>> = {},
  ) => keyName({ key, code, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held })
  expect(press('z', 'KeyZ', { ctrlKey: true })).toBe('Ctrl+Z')
  expect(press('Z', 'KeyZ', { metaKey: true, shiftKey: true })).toBe('Ctrl+Shift+Z')
  expect(press('¡', 'Digit1', { altKey: true })).toBe('Alt+1')
  expect(press('@', 'KeyQ', { altKey: true, ctrlKey: true })).toBe('Ctrl+Alt+Q')
  expect(press('+', 'Equal', { shiftKey: true })).toBe('+')
  expect([press('R', 'KeyR'), press('r', 'KeyR'), press('F1', 'F1'), press(' ', 'Space')]).toEqual([
    'R',
    'R',
    'F1',
    'Space',
  ])
})

test('README lists the same keys', () => {
  const rows = keyPlaces.flatMap(({ where, lines }) =>
    lines.map((line) => `| ${where} | ${shownKeys(line)} | ${line.does} |`),
  )
  const printed = readme
    .split('\n')
    .filter((line) =>
      /^\| (?:Everywhere|House, on|While|In a|Site, in|Walk \| .* \| [A-Z]|Calendar, on)/.test(line),
    )
  expect(printed).toEqual(rows)
})

test('Help and README name the places where the program keeps its book and its backups', () => {
  const path = granted(bookPath({ XDG_DATA_HOME: '/home/u/.local/share' }, 'linux'))
  expect(backupFolderOf(path)).toBe(backupFolder(path))
  const text = helpSections({ version: '1', host: 'desktop', bookPath: path })
    .flatMap(({ paragraphs }) => paragraphs)
    .join('\n')
  expect(text).toContain(path)
  expect(text).toContain(backupFolder(path))
  for (const place of [
    '~/.local/share/coatwright/book.sqlite',
    '~/Library/Application Support/Coatwright/book.sqlite',
    '%APPDATA%\\Coatwright\\book.sqlite',
  ]) {
    expect(readme).toContain(place)
  }
})

test('README has a word on everything the Help page has', () => {
  const titles = helpSections(null).map(({ title }) => `### ${title}`)
  expect(readme.split('\n').filter((line) => titles.includes(line))).toEqual(titles)
})
