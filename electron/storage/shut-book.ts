import type { ShutBook, ShutReason, WayOut } from '../../core/contract/book.ts'
import type { Problem } from '../../core/project/problem.ts'

const waysOutOf: Readonly<Record<ShutReason, readonly WayOut[]>> = {
  damaged: ['tryAgain', 'startNew'],
  logDamaged: ['openReadablePart', 'tryAgain'],
  missing: ['tryAgain', 'startNew'],
  empty: ['tryAgain', 'startNew'],
  replaced: ['openAsItIs', 'tryAgain'],
  exchanged: ['openAsItIs'],
  newer: ['tryAgain'],
  foreign: ['tryAgain', 'startNew'],
  unreachable: ['tryAgain'],
}

export function shutBook(reason: ShutReason, sentence: string): ShutBook {
  return { reason, sentence, waysOut: waysOutOf[reason] }
}

/** A problem found while opening, as the reason why the book stays shut. */
export function shutBy(problem: Problem): ShutBook {
  return shutBook(reasonOf(problem), problem.sentence)
}

function reasonOf({ kind }: Problem): ShutReason {
  switch (kind) {
    case 'fileDamaged':
      return 'damaged'
    case 'fileFromTheFuture':
      return 'newer'
    case 'notAllowed':
      return 'foreign'
    default:
      return 'unreachable'
  }
}

export function missingBook(path: string): ShutBook {
  return shutBook(
    'missing',
    `There is no book of jobs at ${path}, but there are backups of one beside that place. Go back to one of them. If the book was moved, or its drive is not connected, put it back and try again. Only begin a new, empty book if that is what you want.`,
  )
}

export function emptyBook(path: string): ShutBook {
  return shutBook(
    'empty',
    `The book of jobs at ${path} is an empty file, but there are backups of a book beside it. Go back to one of them. Only begin a new, empty book if that is what you want; the empty file is set aside then.`,
  )
}

export function replacedBook(path: string): ShutBook {
  return shutBook(
    'replaced',
    `The book of jobs at ${path} is not the one that the backups beside it were made from. If you put it there, open it as it is. Otherwise go back to a backup; the file that is there now is set aside, not deleted.`,
  )
}

/** @param kept what became of the state the program had */
export function exchangedBook(path: string, kept: string): ShutBook {
  return shutBook(
    'exchanged',
    `The file of the book of jobs, or its log, was replaced, changed or taken away by something else while Coatwright had it open (${path}). Nothing was written into what is there now, and what you have on the page stays there. ${kept}`,
  )
}
