import { stripTypeScriptTypes } from 'node:module'
import { parseAst } from 'vitest/node'

/** A number as written in a source file. `declared`: part of a constant or a table at the top of the file; `inline`: inside a formula. */
export type Constant = {
  file: string
  line: number
  start: number
  end: number
  value: number
  kind: 'declared' | 'inline'
  /** The line it stands on, for people. */
  code: string
}

type Node = { type: string; start: number; end: number } & Record<string, unknown>

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

const FUNCTIONS = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression', 'MethodDefinition'])
/** Inside formulas these are counting and signs, not knowledge: changing them is changing the code. */
const STRUCTURAL = new Set([0, 1, 2])

/** Written like 1e-9: how near is near enough in a calculation, far below what anyone can measure or pour. */
const TOLERANCE = /^1e-\d+$/

function children(node: Node): [string, Node][] {
  return Object.entries(node).flatMap(([key, value]) =>
    Array.isArray(value)
      ? value.filter(isNode).map((one): [string, Node] => [key, one])
      : isNode(value)
        ? [[key, value] as [string, Node]]
        : [],
  )
}

function walk(node: Node, inFunction: boolean, found: (literal: Node, inFunction: boolean) => void): void {
  if (node.type === 'Literal' && typeof node.value === 'number') found(node, inFunction)
  // A position in a list is no constant: a[0].
  const skipped = node.type === 'MemberExpression' && node.computed === true ? 'property' : node.type === 'Property' ? 'key' : ''
  const inside = inFunction || FUNCTIONS.has(node.type)
  for (const [key, child] of children(node)) if (key !== skipped) walk(child, inside, found)
}

/** Every number of a TypeScript source that may be knowledge: all in declarations, in functions all but 0, 1 and 2; tolerances (1e-9) left out. */
export function findConstants(file: string, source: string): Constant[] {
  // Types become blanks, so that every place in the code stays where it was.
  const program = parseAst(stripTypeScriptTypes(source)) as unknown as Node
  const constants: Constant[] = []
  walk(program, false, ({ start, end, value }, inFunction) => {
    if (inFunction && STRUCTURAL.has(value as number)) return
    if (TOLERANCE.test(source.slice(start, end))) return
    const lineStart = source.lastIndexOf('\n', start - 1) + 1
    const code = source.slice(lineStart, source.indexOf('\n', start)).trim()
    const line = source.slice(0, start).split('\n').length
    constants.push({ file, line, start, end, value: value as number, kind: inFunction ? 'inline' : 'declared', code })
  })
  return constants
}

/** Whole minutes are shown whole and things are counted whole: a change of less than one would be rounded away. */
const WHOLE = /^minutes: \d+,$|^const MOST_[A-Z]+S = \d+$/

/** The value it is changed to: 7 % more, and whole minutes and whole numbers inside formulas one more (a count stays a count). */
export function changedValue({ value, kind, code }: Pick<Constant, 'value' | 'kind' | 'code'>): number {
  if (Number.isInteger(value) && value < 15 && (kind === 'inline' || WHOLE.test(code))) return value + 1
  return value === 0 ? 0.07 : value * 1.07
}

/** The source with one constant changed. */
export function changedSource(source: string, constant: Constant): string {
  return source.slice(0, constant.start) + String(changedValue(constant)) + source.slice(constant.end)
}
