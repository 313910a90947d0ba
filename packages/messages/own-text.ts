import { Liquid, type Template } from 'liquidjs'

/** A company may write its own texts with names in double braces and choices between them; nothing that repeats, reads a file or takes another text in. */
const TAGS = ['if', 'unless', 'case']
const FILTERS = ['default', 'upcase', 'downcase', 'capitalize', 'strip']
/** Bounds of one text: letters to read, milliseconds to fill it in, letters that may come of it. */
const LIMITS = { parseLimit: 10_000, renderLimit: 2_000, memoryLimit: 200_000 }
const LONGEST = 20_000

/** What is filled in: null for what is not known, which `{% if name %}` takes as no. */
export type OwnValues = Readonly<Record<string, string | number | null>>
export type Filled = { ok: true; text: string } | { ok: false; reason: string }

const keepOnly = (all: object, wanted: readonly string[]) => {
  for (const name of Object.keys(all)) if (!wanted.includes(name)) Reflect.deleteProperty(all, name)
}

function makeEngine(): Liquid {
  const engine = new Liquid({
    strictVariables: true,
    strictFilters: true,
    ownPropertyOnly: true,
    templates: {},
    relativeReference: false,
    ...LIMITS,
  })
  keepOnly(engine.tags, TAGS)
  keepOnly(engine.filters, FILTERS)
  return engine
}
const engine = makeEngine()

/** Sentences for what the library says, which is written for people who program. */
const SAID: readonly [RegExp, (found: RegExpExecArray) => string][] = [
  [/tag "?(\S+?)"? not found/, ([, tag]) => `“${tag}” can’t be used here; only if, unless and case can`],
  [/tag "?(.+?)"? not closed/, () => 'a “{%” is never closed or never ended; end each choice with {% endif %}'],
  [/output "?(.+?)"? not closed/, () => 'a “{{” is never closed; write {{ name }}'],
  [/undefined filter: (\S+?),/, ([, filter]) => `“| ${filter}” can’t be used here`],
  [/limit exceeded/, () => 'it’s too long; shorten it'],
]

function sentenceOf(error: unknown): string {
  const { message = '', token } = error as { message?: string; token?: { getPosition?: () => number[] } }
  const line = token?.getPosition?.()[0] ?? /line:(\d+)/.exec(message)?.[1]
  const said = SAID.flatMap(([form, say]) => {
    const found = form.exec(message)
    return found ? [say(found)] : []
  })[0]
  return `We can’t read ${line === undefined ? 'the text' : `line ${line}`}: ${said ?? 'something in braces isn’t complete'}.`
}

/** The first name that is none of those known, as a sentence. */
function unknownName(templates: Template[], known: readonly string[]): string | null {
  const { globals } = engine.analyzeSync(templates, { partials: false })
  const [name, uses] = Object.entries(globals).find(([one]) => !known.includes(one)) ?? []
  if (name === undefined) return null
  return `There’s no “${name}” to fill in (line ${uses?.[0]?.location.row ?? 1}). Use one of: ${known.join(', ')}.`
}

/** What is wrong with a text, as a sentence; null where it can be filled in. `needed` is a name that it must hold. */
export function checkOwnText(text: string, known: readonly string[], needed?: string): string | null {
  try {
    const templates = engine.parse(text)
    const unknown = unknownName(templates, known)
    if (unknown !== null || needed === undefined) return unknown
    return Object.keys(engine.analyzeSync(templates, { partials: false }).globals).includes(needed)
      ? null
      : `Keep {{ ${needed} }} in the text: it’s how customers answer, and stop reminders.`
  } catch (error) {
    return sentenceOf(error)
  }
}

/** A text with its values. They stand in it as they are: braces in somebody's name are no names to fill in. Whoever shows it escapes it as its place needs. */
export function fillOwnText(text: string, values: OwnValues): Filled {
  try {
    const filled = engine.parseAndRenderSync(text, { ...values }) as string
    return filled.length > LONGEST ? { ok: false, reason: 'It gets too long. Shorten it.' } : { ok: true, text: filled }
  } catch (error) {
    return { ok: false, reason: sentenceOf(error) }
  }
}
