import type { Job } from './job.ts'
import { type Problem, problem } from './problem.ts'
import { scopeKey } from './scopes.ts'
import { surfaceKey } from './surface-ref.ts'
import type { Existing, Finish, Scope } from './survey-records.ts'
import type { SurfaceClass } from './vocabulary.ts'

/** One thing said twice: two finishes, or two records of what is there now, for the very same scope. Only one could count. */
export function scopeProblems(job: Job): readonly Problem[] {
  return [
    ...twiceIn(job, 'existing', 'what is there now', Object.values(job.existing)),
    ...twiceIn(job, 'finishes', 'the finish', Object.values(job.finishes)),
  ]
}

function twiceIn(
  job: Job,
  name: 'existing' | 'finishes',
  what: string,
  items: readonly (Existing | Finish)[],
): readonly Problem[] {
  const firstIds = new Map<string, string>()
  return items.flatMap(({ id, scope }, index) => {
    const key = scopeKey(scope)
    const first = firstIds.get(key)
    if (first === undefined) {
      firstIds.set(key, id)
      return []
    }
    const place = `${name}[${index}].scope`
    const sentence = `"${first}" and "${id}" both say ${what} of ${scopeWords(job, scope)}. Take one of the two away, or give it another scope.`
    return [problem('duplicateScope', sentence, [first, id], place)]
  })
}

function scopeWords(job: Job, scope: Scope): string {
  switch (scope.level) {
    case 'house':
      return `${classNouns[scope.surfaceClass]} in the whole house`
    case 'room':
      return `${classNouns[scope.surfaceClass]} in ${job.rooms[scope.roomId]?.name ?? scope.roomId}`
    case 'surface':
      return `the surface ${surfaceKey(scope.surface)}`
  }
}

const classNouns: Readonly<Record<SurfaceClass, string>> = {
  ceiling: 'the ceiling',
  walls: 'the walls',
  wainscot: 'the wainscot',
  trim: 'the trim',
  doors: 'the doors',
  sash: 'the sash',
  stairs: 'the stairs',
  radiators: 'the radiators',
  builtWork: 'the built work',
}
