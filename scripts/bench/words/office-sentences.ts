// The sentences that the office's screens, refusals, papers and mails hold in their sources: JSX with its inner tags as one text, strings, templates.
import { execFileSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { parseAst } from 'rolldown/parseAst'
import { root } from '../../support/paths.mjs'

interface Node {
  type: string
  start: number
  [key: string]: unknown
}

/** What no person reads in the app: faults of a plan's or a problem's own form, words of headings that an import knows. */
const NOT_READ =
  /^packages\/(words|database)\/|\/generated\/|\/test-|dispatch\/(checker|checker-linked|problem|linked)\/|import\/(header|notes)-words|firm\/config/
/** What stands below a plain sentence in a why panel: a method's or a book's own words. */
const METHOD = /^(formula|source|sources)$/
/** What an attribute holds for machines. */
const MACHINE_ATTRIBUTE =
  /^(className|style|d|viewBox|id|key|href|src|type|role|htmlFor|name|autoComplete|inputMode|transform|rel|target|data-.*)$/
/** Strings that are no words for people: class lists, SQL, types and imports. */
const MACHINE_NODE = /^Import|^ExportAll|^TS(?!(As|Satisfies|NonNull)Expression)|TaggedTemplate/
const CLASSES_OR_SQL =
  /(^|\s)(flex|grid|-?m[tblrxy]?-\d|p[tblrxy]?-\d|w-\w|h-\w|text-(sm|xs|ink|base|lg)|border|rounded\S*|print:\S+)(\s|$)|^\s*(select|insert|update|delete|with|lock|set|create|alter)\s/i

const sourceFiles = () =>
  execFileSync('git', ['ls-files', '-z', 'apps/web', 'apps/worker', 'packages'], { cwd: root, encoding: 'utf8', maxBuffer: 64e6 })
    .split('\0')
    .filter((file) => /\.tsx?$/.test(file) && !/\.(test|d)\.tsx?$/.test(file) && !NOT_READ.test(file))

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

function childrenOf(node: Node): Node[] {
  return Object.values(node).flatMap((value) => (Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : []))
}

/** A template's text with `ten` where a value stands. */
function templateText(node: Node): string {
  return (node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join('ten')
}

/** The text between an element's tags, inner tags taken along; null where it holds none of its own. */
function elementText(node: Node): string | null {
  const parts = (node.children as Node[]).map((child) => {
    if (child.type === 'JSXText') return String(child.value)
    if (child.type === 'JSXElement') return elementText(child) ?? ''
    const held = child.expression as Node | undefined
    if (child.type !== 'JSXExpressionContainer' || !held || held.type === 'JSXEmptyExpression') return ''
    if (held.type === 'Literal') return String(held.value)
    return held.type === 'TemplateLiteral' ? templateText(held) : 'ten'
  })
  const own = (node.children as Node[]).some((child) => child.type === 'JSXText' && /\p{L}/u.test(String(child.value)))
  return own ? parts.join('') : null
}

/** Every text of one source, with the line it begins in. */
function sentencesIn(source: string, lang: 'ts' | 'tsx'): { line: number; text: string }[] {
  const found: { line: number; text: string }[] = []
  const take = (node: Node, text: string) => {
    const clean = text.replace(/\s+/g, ' ').trim()
    if (/\p{L}{2}/u.test(clean) && /^[\p{Lu}“\d]|ten /u.test(clean) && !CLASSES_OR_SQL.test(clean))
      found.push({ line: source.slice(0, node.start).split('\n').length, text: clean })
  }
  const walk = (node: Node, insideText: boolean) => {
    if (MACHINE_NODE.test(node.type)) return
    if (node.type === 'JSXAttribute' && MACHINE_ATTRIBUTE.test(String((node.name as Node).name ?? ''))) return
    if (node.type === 'Property' && METHOD.test(String((node.key as Node).name ?? ''))) return
    if (node.type === 'Literal' && typeof node.value === 'string') return insideText || take(node, node.value)
    if (node.type === 'TemplateLiteral') {
      if (!insideText) take(node, templateText(node))
      for (const held of node.expressions as Node[]) walk(held, false)
      return
    }
    if (node.type === 'JSXElement' || node.type === 'JSXFragment') {
      const text = insideText ? null : elementText(node)
      if (text !== null) take(node, text)
      if (isNode(node.openingElement)) for (const attribute of node.openingElement.attributes as Node[]) walk(attribute, false)
      for (const child of node.children as Node[]) walk(child, insideText || text !== null)
      return
    }
    if (node.type === 'JSXExpressionContainer') {
      const held = node.expression as Node
      // A text or template that stands right between the tags belongs to the text around it; what a condition chooses is a text of its own.
      const belongs = insideText && (held.type === 'Literal' || held.type === 'TemplateLiteral')
      if (belongs && held.type === 'TemplateLiteral') for (const inner of held.expressions as Node[]) walk(inner, false)
      if (!belongs) walk(held, false)
      return
    }
    for (const child of childrenOf(node)) walk(child, insideText)
  }
  walk(parseAst(source, { lang }) as unknown as Node, false)
  return found
}

/** Texts of the product's sources, each once: `at` is file and line. */
export function officeTexts(): { at: string; text: string }[] {
  const texts = new Map<string, string>()
  for (const file of sourceFiles()) {
    const source = fs.readFileSync(path.join(root, file), 'utf8')
    for (const { line, text } of sentencesIn(source, file.endsWith('x') ? 'tsx' : 'ts'))
      if (!texts.has(text)) texts.set(text, `${file}:${line}`)
  }
  return [...texts].map(([text, at]) => ({ at, text }))
}
