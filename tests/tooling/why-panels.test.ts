// Whoever asks why reads one plain sentence first; what statistics or a formula call it stands below it.
import { execFileSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { en } from '@almanac/words/en/all'
import { parseAst } from 'rolldown/parseAst'
import { describe, expect, it } from 'vitest'

type Node = { type: string; [key: string]: unknown }
const root = path.resolve(import.meta.dirname, '../..')
/** Words of statistics and of models: a reader without a course in either stops at them. */
const TERMS =
  /\b(mean|medians?|intervals?|hazard|posterior|prior|weibull|lognormal|percentiles?|quantiles?|poisson|binomial|bayes|likelihoods?|distributions?|parameters?|covariance|variance|standard deviation|confidence|regression|integer|solver|exponent|brier|kaplan|ergun)\b/i

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

/** The texts an expression may come to, `{}` where a value is put in. */
function texts(node: Node): string[] {
  if (node.type === 'Literal') return typeof node.value === 'string' ? [node.value] : []
  if (node.type === 'TemplateLiteral') return [(node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join('{}')]
  if (node.type === 'ConditionalExpression') return [...texts(node.consequent as Node), ...texts(node.alternate as Node)]
  return []
}

/** Values of properties called `summary`, and the second argument of `why(title, summary, …)`. */
function summaries(node: Node, found: string[] = []): string[] {
  if (node.type === 'Property' && (node.key as Node).name === 'summary') found.push(...texts(node.value as Node))
  const called = node.type === 'CallExpression' ? (node.callee as Node).name : null
  const said = called === 'why' ? (node.arguments as Node[])[1] : undefined
  if (said) found.push(...texts(said))
  for (const value of Object.values(node)) for (const one of Array.isArray(value) ? value : [value]) if (isNode(one)) summaries(one, found)
  return found
}

const firstSentence = (text: string) => text.split(/(?<=[.?])\s/)[0] ?? text

describe('the first sentence of each why panel', () => {
  const listed = execFileSync('git', ['grep', '-lE', 'summary[:,]|<Why', '--', 'apps/web', 'packages'], { cwd: root, encoding: 'utf8' })
  const files = listed
    .split('\n')
    .filter((file) => /\.tsx?$/.test(file) && !/\.test\.|\/(contract|database|operations|service-rules)\//.test(file))
  // Those of the settings card stand among the words, each under the name of its line.
  const spoken = Object.entries(en.cardWhy).filter(([key]) => /\/sum$|^salt\/(cost|salt|none|wanted)$/.test(key))
  const written = files.flatMap((file) => {
    const parsed = parseAst(fs.readFileSync(path.join(root, file), 'utf8'), { lang: file.endsWith('x') ? 'tsx' : 'ts' })
    return summaries(parsed as unknown as Node).map((text) => ({ file, text: firstSentence(text) }))
  })

  const found = [...written, ...spoken.map(([key, text]) => ({ file: `card-why ${key}`, text: firstSentence(text) }))]

  it('is found where it is written', () => {
    // Coming due, its plan, policy, the bed's dates and kit, three choices, advice, tank, and the lines of a settings card.
    expect(found.length).toBeGreaterThan(35)
    expect(new Set(found.map(({ file }) => file)).size).toBeGreaterThan(10)
  })

  it('has no term of statistics, and is a sentence', () => {
    expect(found.filter(({ text }) => TERMS.test(text))).toEqual([])
    expect(found.filter(({ text }) => text.split(' ').length > 25)).toEqual([])
  })

  it('would be found out otherwise', () => {
    const planted = parseAst("const a = { summary: 'The median is 9 years. Plain words.' }", { lang: 'ts' })
    expect(
      summaries(planted as unknown as Node)
        .map(firstSentence)
        .filter((text) => TERMS.test(text)),
    ).toEqual(['The median is 9 years.'])
  })
})
