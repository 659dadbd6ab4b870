import type { Node, SourceFile } from 'typescript/unstable/ast'
import {
  isCallExpression,
  isIdentifier,
  isNewExpression,
  isPropertyAccessExpression,
  isStringLiteral,
} from 'typescript/unstable/ast/is'
import { createVirtualFileSystem } from 'typescript/unstable/fs'
import { API } from 'typescript/unstable/sync'

export interface SourceText {
  /** From the top of the checkout, with slashes: `core/units/length.ts`. */
  readonly path: string
  readonly text: string
}

/** What a file reaches for outside itself. */
export interface Reading {
  readonly path: string
  /** Every specifier: static, type-only, re-exported, dynamic, import types, `require`. One that is computed is `(computed)`. */
  readonly imports: readonly string[]
  /** The clock and the dice: `Date.now`, `new Date()`, `Math.random`, `performance.now`. */
  readonly clockAndDice: readonly string[]
}

/** Lets the compiler's own parser read the files, so that comments, strings and markup cannot be taken for imports. */
export function readSources(sources: readonly SourceText[]): readonly Reading[] {
  const place = (path: string) => `/house/${path}`
  const options = {
    noLib: true,
    noResolve: true,
    types: [],
    allowJs: true,
    jsx: 'preserve',
    module: 'esnext',
  }
  const config = { compilerOptions: options, files: sources.map(({ path }) => place(path)) }
  const texts = Object.fromEntries(sources.map(({ path, text }) => [place(path), text]))
  const configFile = place('tsconfig.json')
  const files = createVirtualFileSystem({ ...texts, [configFile]: JSON.stringify(config) })
  const compiler = new API({ cwd: '/house', fs: files })
  try {
    const project = compiler.updateSnapshot({ openProjects: [configFile] }).getProjects()[0]
    return sources.map(({ path }) => {
      const file = project?.program.getSourceFile(place(path))
      if (file === undefined) throw new Error(`the compiler did not read ${path}`)
      return { path, imports: importsOf(file), clockAndDice: clockAndDiceOf(file) }
    })
  } finally {
    compiler.close()
  }
}

function importsOf(file: SourceFile): readonly string[] {
  const listed = file.imports.map((node) => (isStringLiteral(node) ? node.text : '(computed)'))
  const called = nodesOf(file).flatMap((node) => {
    if (!isCallExpression(node)) return []
    const isRequire = isIdentifier(node.expression) && node.expression.text === 'require'
    const isImport = node.expression.getText(file) === 'import'
    if (!isRequire && !isImport) return []
    const [specifier] = node.arguments
    return specifier !== undefined && isStringLiteral(specifier) ? [specifier.text] : ['(computed)']
  })
  return [...new Set([...listed, ...called])]
}

function clockAndDiceOf(file: SourceFile): readonly string[] {
  const forbidden = ['Date.now', 'Math.random', 'performance.now']
  return nodesOf(file).flatMap((node) => {
    if (isPropertyAccessExpression(node)) {
      const text = node.getText(file)
      return forbidden.includes(text) ? [text] : []
    }
    if (!isNewExpression(node) || node.expression.getText(file) !== 'Date') return []
    return node.arguments === undefined || node.arguments.length === 0 ? ['new Date()'] : []
  })
}

function nodesOf(file: SourceFile): readonly Node[] {
  const found: Node[] = []
  const visit = (node: Node): undefined => {
    found.push(node)
    node.forEachChild(visit)
  }
  visit(file)
  return found
}
