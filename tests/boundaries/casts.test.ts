import { expect, test } from 'vitest'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

/** Rooms of arithmetic over lists whose places are in range by how they were made; a check of each would cost time in inner loops. */
const numericKernels = /^core\/(geometry|schedule\/(bound|fitting|tries))\//

const brand = 'the one place where a number or a text gets its unit or kind'
const byName =
  'parts are put together by name in a loop, which the compiler does not follow; every name is there'
const remembered = 'a memory by identity, which the compiler cannot tie to what was put in'
const checkedNext = 'the codec is given anything, and checks it'
const given = 'ids of the engine are those of the records it was made from'

/** Casts that stay: how many in a file, and why. */
const kept: Readonly<Record<string, readonly [count: number, reason: string]>> = {
  'core/lists/lists.ts': [2, 'objects with just the fields of their type'],
  'core/passes/pass-order.ts': [1, 'the same edges come back, in another order'],
  'core/project/diff.ts': [3, byName],
  'core/project/graft.ts': [1, byName],
  'core/project/job-file-schema.ts': [1, byName],
  'core/project/job-file.ts': [2, byName],
  'core/project/job.ts': [1, remembered],
  'core/project/rebase.ts': [2, `${byName}; ${checkedNext}`],
  'core/project/schema-parts.ts': [1, brand],
  'core/project/schema-words.ts': [2, 'a JSON Schema is a tree of plain objects'],
  'core/project/scopes.ts': [1, remembered],
  'core/price/rate-names.ts': [1, 'a name that is no operation finds no words'],
  'core/quantities/surface-index.ts': [1, 'the key of a surface holds the id of its room'],
  'core/schedule/job-plan.ts': [3, given],
  'core/sketch/apply-command.ts': [1, checkedNext],
  'core/sketch/job-edits.ts': [1, 'a table by its name, which the compiler takes for any table'],
  'core/sketch/room-copies.ts': [1, 'a new id is of the kind of the old one'],
  'core/sketch/tape-list/tape-lengths.ts': [1, 'the pattern lets only these units through'],
  'core/specification/findings.ts': [1, 'damage nobody noted has a key of its own form, which no record has'],
  'core/time/instant.ts': [1, brand],
  'core/units/area.ts': [1, brand],
  'core/units/duration.ts': [2, brand],
  'core/units/length.ts': [1, brand],
  'core/units/money.ts': [1, brand],
  'core/units/volume.ts': [1, brand],
  'core/work-order/by-room.ts': [1, remembered],
  'renderer/bridge/client.ts': [1, 'what the host of the same build answers'],
  'renderer/canvas/sketch-input.ts': [1, 'an id that no record has'],
  'renderer/panels/house/BuiltFields.tsx': [1, 'fields are named by words; the core checks what is put back'],
  'renderer/panels/paper/choice-memory.ts': [1, 'ids of records of this job, looked up before they are used'],
  'renderer/state/new-id.ts': [1, brand],
  'renderer/state/planner-worker.ts': [1, 'the page\u2019s type library has no workers'],
  'electron/handlers/answer.ts': [1, 'the argument was checked by the schema of the same name'],
  'electron/handlers/job-files-beside.ts': [6, 'what goes through the channel to a thread of the same build'],
  'electron/loopback/server.ts': [1, 'a request without an encoding gives buffers'],
  'electron/main/window-state.ts': [1, 'its numbers are looked at before they are used'],
  'electron/storage/accepted-plans.ts': [1, 'read by the schema of issued papers'],
  'electron/storage/checked-edit.ts': [2, 'kept by the schema of its collection just before'],
  'electron/storage/job-bodies.ts': [2, byName],
  'electron/storage/job-rows.ts': [1, 'read by the schema of what was agreed'],
  'electron/storage/record-bodies.ts': [1, checkedNext],
}

test('casts stand where a reason for them is written down, and nowhere else', () => {
  const found = readSources(['core', 'renderer', 'electron'].flatMap(sourcesOf))
    .filter(({ path, casts }) => casts.length > 0 && !numericKernels.test(path))
    .map(({ path, casts }) => [path, casts.length] as const)
  expect(Object.fromEntries(found)).toEqual(
    Object.fromEntries(Object.entries(kept).map(([path, [count]]) => [path, count])),
  )
  expect(found.reduce((sum, [, count]) => sum + count, 0)).toBeLessThan(60)
})

test('only an as of a type is a cast', () => {
  const text =
    'const a = [1] as const, b = x as number, c = { as: 1 } // as never\nimport { d as e } from "./d.ts"'
  expect(readSources([{ path: 'core/a.ts', text }])[0]?.casts).toEqual(['x as number'])
})
