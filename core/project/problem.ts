/**
 * Something that cannot be done as asked. Problems are data: they cross processes, name the place, and carry
 * a sentence for the user that says what is wrong and what to do.
 */
export type ProblemKind =
  /** Text that is not a job file, or a record that breaks the form. `path` names the place. */
  | 'notValid'
  | 'danglingReference'
  | 'duplicateId'
  /** Two records say the same thing of the same scope. */
  | 'duplicateScope'
  | 'outlineCrossesItself'
  | 'outlineDegenerate'
  | 'wallTooShort'
  | 'openingOutsideWall'
  | 'openingsOverlap'
  | 'openingAboveCeiling'
  | 'farSideDoesNotFace'
  | 'sashDoesNotFit'
  | 'headDoesNotFit'
  | 'ceilingBelowFloor'
  | 'ceilingLineWrong'
  | 'ceilingOpeningOutside'
  | 'trimDoesNotFit'
  | 'notFound'
  | 'stillInUse'
  | 'ruleClash'
  | 'noPlan'
  | 'fileFromTheFuture'
  | 'fileDamaged'
  | 'alreadyOpen'
  | 'storageFailed'
  /** The book of jobs is not open: it was damaged, missing or exchanged. Nothing is stored until the user has chosen what to do. */
  | 'bookShut'
  /** An edit made to an older state of the job than the book has. */
  | 'staleEdit'
  | 'notAllowed'
  | 'hostFailed'

export interface Problem {
  readonly kind: ProblemKind
  /** For the user: what is wrong, where, and what to do. */
  readonly sentence: string
  /** Where: a path in a file (`rooms[2].corners[0].x`) or ids of records. */
  readonly path: string
  readonly ids: readonly string[]
}

export type Outcome<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem }

/** The outcome of what went well. */
export function succeed<Value>(value: Value): Outcome<Value> {
  return { ok: true, value }
}

/**
 * @param sentence what is wrong and what to do about it, for the user
 * @param ids records it is about
 * @param path place in a file, where there is one
 */
export function problem(
  kind: ProblemKind,
  sentence: string,
  ids: readonly string[] = [],
  path = '',
): Problem {
  return { kind, sentence, path, ids }
}

/** The outcome of what was refused; the arguments are those of `problem`. */
export function fail(
  kind: ProblemKind,
  sentence: string,
  ids: readonly string[] = [],
  path = '',
): Outcome<never> {
  return { ok: false, problem: problem(kind, sentence, ids, path) }
}
