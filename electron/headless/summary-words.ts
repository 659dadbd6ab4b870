import { fail, type Outcome, succeed } from '../../core/project/problem.ts'

interface PlanWords {
  readonly jobFile: string
  readonly outFolder: string
}

const usage = 'npm run plan -- <job.json> --out <folder>'

/** The words of the command line, in either order. */
export function readWords(words: readonly string[]): Outcome<PlanWords> {
  const files: string[] = []
  let outFolder: string | undefined
  for (let at = 0; at < words.length; at++) {
    const word = words[at] ?? ''
    if (word === '--out') outFolder = words[++at]
    else if (word.startsWith('--out=')) outFolder = word.slice('--out='.length)
    else if (word.startsWith('-')) return fail('notValid', `There is no option ${word}. Use: ${usage}`)
    else files.push(word)
  }
  const [jobFile, another] = files
  if (jobFile === undefined || !outFolder || another !== undefined) {
    return fail('notValid', `One job file and one folder are needed. Use: ${usage}`)
  }
  return succeed({ jobFile, outFolder })
}
