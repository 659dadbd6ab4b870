import type {
  FunctionLikeDeclaration,
  ImportDeclaration,
  Node,
  SourceFile,
  TemplateHead,
  TemplateMiddle,
  TemplateTail,
} from 'typescript/unstable/ast'
import {
  isArrowFunction,
  isAsExpression,
  isCallExpression,
  isExportDeclaration,
  isFunctionDeclaration,
  isFunctionLikeDeclaration,
  isIdentifier,
  isImportDeclaration,
  isImportTypeNode,
  isInterfaceDeclaration,
  isJsxAttribute,
  isJsxOpeningElement,
  isJsxSelfClosingElement,
  isJsxText,
  isNamedExports,
  isNamedImports,
  isNewExpression,
  isNoSubstitutionTemplateLiteral,
  isPropertyAccessExpression,
  isStringLiteral,
  isTemplateHead,
  isTemplateMiddle,
  isTemplateTail,
  isTypeAliasDeclaration,
  isVariableDeclaration,
  isVariableStatement,
} from 'typescript/unstable/ast/is'
import { createVirtualFileSystem } from 'typescript/unstable/fs'
import { API } from 'typescript/unstable/sync'

export interface SourceText {
  /** From the top of the checkout, with slashes: `core/units/length.ts`. */
  readonly path: string
  readonly text: string
}

/** The names that a file takes from another one; `*` stands for all of them. */
export interface Taking {
  readonly specifier: string
  readonly names: readonly string[]
}

/** A name that a file exports, and whether the file itself uses it outside of the statement that makes it. */
export interface Export {
  readonly name: string
  readonly usedAtHome: boolean
}

/** What a file reaches for outside itself, and what it gives to others. */
export interface Reading {
  readonly path: string
  /** Every specifier: static, type-only, re-exported, dynamic, import types, `require`. One that is computed is `(computed)`. */
  readonly imports: readonly string[]
  /** The clock and the dice: `Date.now`, `new Date()`, `Math.random`, `performance.now`. */
  readonly clockAndDice: readonly string[]
  readonly takings: readonly Taking[]
  readonly exports: readonly Export[]
  /** Every `as` of a type; `as const` says nothing that is not so. */
  readonly casts: readonly string[]
  /** Names of the elements in the markup, as they are written. */
  readonly elements: readonly string[]
  /** What a person may come to read: text of the markup, and strings that are words rather than a name in the program. */
  readonly shown: readonly string[]
  /** Lines of text; the empty one behind the last line break is none. */
  readonly lines: number
  readonly functions: readonly FunctionReading[]
}

/** A function or method with a body, also one inside another. */
export interface FunctionReading {
  /** Of its own, or of what it is assigned to; empty where it has neither. */
  readonly name: string
  /** From its first word to its last brace. */
  readonly lines: number
  readonly isExported: boolean
  /** A comment of documentation stands right before its statement. */
  readonly isDocumented: boolean
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
      const imports = importsOf(file)
      const takings = takingsOf(file, imports)
      return {
        path,
        imports,
        clockAndDice: clockAndDiceOf(file),
        takings,
        exports: exportsOf(file),
        casts: castsOf(file),
        elements: elementsOf(file),
        shown: shownIn(file),
        lines: linesOf(file.text.trimEnd()),
        functions: functionsOf(file),
      }
    })
  } finally {
    compiler.close()
  }
}

/** Strings with a blank in them or a capital before small letters; names of classes and types, and statements for the database, are no words. */
function shownIn(file: SourceFile): readonly string[] {
  const texts = nodesOf(file).flatMap((node) => {
    if (isJsxText(node)) return [node.text]
    const isText = isStringLiteral(node) || isNoSubstitutionTemplateLiteral(node) || isTemplatePart(node)
    if (!isText || isClassName(node.parent)) return []
    const isWords =
      /\s|^[A-Z][a-z]+$/.test(node.text) &&
      !/^(?:SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|WITH) /.test(node.text.trim())
    return isWords ? [node.text] : []
  })
  return texts.map((text) => text.replace(/\s+/g, ' ').trim()).filter((text) => /[a-z]{2}/i.test(text))
}

function isTemplatePart(node: Node): node is TemplateHead | TemplateMiddle | TemplateTail {
  return isTemplateHead(node) || isTemplateMiddle(node) || isTemplateTail(node)
}

function isClassName(node: Node): boolean {
  return isJsxAttribute(node) && isIdentifier(node.name) && node.name.text === 'className'
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

function takingsOf(file: SourceFile, imports: readonly string[]): readonly Taking[] {
  const named = file.statements.flatMap((node): readonly Taking[] => {
    if (isImportDeclaration(node) && isStringLiteral(node.moduleSpecifier)) {
      return [{ specifier: node.moduleSpecifier.text, names: namesImported(node) }]
    }
    if (!isExportDeclaration(node) || node.moduleSpecifier === undefined) return []
    if (!isStringLiteral(node.moduleSpecifier)) return []
    const { exportClause } = node
    const names =
      exportClause !== undefined && isNamedExports(exportClause)
        ? exportClause.elements.map(({ propertyName, name }) => (propertyName ?? name).text)
        : ['*']
    return [{ specifier: node.moduleSpecifier.text, names }]
  })
  const known = new Set(named.map(({ specifier }) => specifier))
  const types = nodesOf(file).flatMap((node) =>
    isImportTypeNode(node) ? [node.argument.getText(file).slice(1, -1)] : [],
  )
  const whole = [...imports.filter((specifier) => !known.has(specifier)), ...types]
  return [...named, ...whole.map((specifier) => ({ specifier, names: ['*'] }))]
}

function namesImported({ importClause }: ImportDeclaration): readonly string[] {
  if (importClause === undefined) return []
  const { name, namedBindings } = importClause
  const bound =
    namedBindings === undefined
      ? []
      : isNamedImports(namedBindings)
        ? namedBindings.elements.map(({ propertyName, name: own }) => (propertyName ?? own).text)
        : ['*']
  return name === undefined ? bound : ['default', ...bound]
}

function exportsOf(file: SourceFile): readonly Export[] {
  const words = file.statements.map((node) => new Set(wordsOf(node)))
  return file.statements.flatMap((node, at) =>
    namesExported(node, file).map((name) => ({
      name,
      usedAtHome: words.some((others, place) => place !== at && others.has(name)),
    })),
  )
}

function namesExported(node: Node, file: SourceFile): readonly string[] {
  if (isExportDeclaration(node)) {
    const { exportClause } = node
    if (exportClause === undefined || !isNamedExports(exportClause)) return []
    return exportClause.elements.map(({ name }) => name.text)
  }
  if (!/^export (?!default)/.test(node.getText(file))) return []
  if (isVariableStatement(node)) {
    return node.declarationList.declarations.map(({ name }) => name.getText(file))
  }
  if (isFunctionDeclaration(node)) return [node.name?.text ?? 'default']
  return isInterfaceDeclaration(node) || isTypeAliasDeclaration(node) ? [node.name.text] : []
}

function wordsOf(node: Node): readonly string[] {
  return nodesOf(node).flatMap((part) => (isIdentifier(part) ? [part.text] : []))
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

function castsOf(file: SourceFile): readonly string[] {
  return nodesOf(file).flatMap((node) =>
    isAsExpression(node) && node.type.getText(file) !== 'const' ? [node.getText(file)] : [],
  )
}

function elementsOf(file: SourceFile): readonly string[] {
  return nodesOf(file).flatMap((node) =>
    isJsxOpeningElement(node) || isJsxSelfClosingElement(node) ? [node.tagName.getText(file)] : [],
  )
}

function functionsOf(file: SourceFile): readonly FunctionReading[] {
  return file.statements.flatMap((statement) => {
    const top = functionOfStatement(statement)
    const opening = file.text.slice(statement.pos, statement.getStart(file))
    return nodesOf(statement)
      .filter(isFunctionLikeDeclaration)
      .map((node) => ({
        name: nameOfFunction(node, file),
        lines: linesOf(node.getText(file)),
        isExported: node === top && /^export /.test(statement.getText(file)),
        isDocumented: node === top && /\*\/\s*$/.test(opening) && opening.includes('/**'),
      }))
  })
}

/** The function that a statement declares or gives a name to. */
function functionOfStatement(statement: Node): Node | undefined {
  if (isFunctionDeclaration(statement)) return statement
  if (!isVariableStatement(statement)) return undefined
  const made = statement.declarationList.declarations[0]?.initializer
  return made !== undefined && isFunctionLikeDeclaration(made) ? made : undefined
}

function nameOfFunction(node: FunctionLikeDeclaration, file: SourceFile): string {
  const named = isArrowFunction(node) ? node.parent : node
  const isNamed = named === node || isVariableDeclaration(named)
  return isNamed && 'name' in named ? (named.name?.getText(file) ?? '') : ''
}

function linesOf(text: string): number {
  return text.split('\n').length
}

function nodesOf(top: Node): readonly Node[] {
  const found: Node[] = []
  const visit = (node: Node): undefined => {
    found.push(node)
    node.forEachChild(visit)
  }
  visit(top)
  return found
}
