/** What is known of somebody who is to be erased. */
export type Traces = { names: readonly string[]; phones: readonly string[]; emails: readonly string[] }

/**
 * What to look for: `pattern`, PostgreSQL's regular expression without regard to case, and `hints`, patterns of LIKE: whatever `pattern` finds has in lower case one of them, so
 * that most texts need no closer look.
 */
export type Search = { pattern: string; hints: string[] }

/** `everywhere` names this person and nobody else; `nearby` may be anybody’s, so only the person’s own records are searched for it. Null: nothing to look for. */
export type ErasePatterns = { everywhere: Search | null; nearby: Search | null }

type Part = { pattern: string; hint: string }

const START = '(?<![[:alnum:]])'
const END = '(?![[:alnum:]])'
/** What stands between the words of a name, or the digits of a number, however it was typed: nothing, a space, a hyphen, an apostrophe, a comma and a space. */
const BETWEEN = '[^[:alnum:]]{0,4}'
const LEAST_DIGITS = 7
/** A number is the same with its country’s code before it or without. */
const OWN_DIGITS = 10

const escaped = (text: string) => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')
const wordsOf = (name: string) => name.match(/[\p{L}\p{N}]+/gu) ?? []
const joined = (words: readonly string[]) => START + words.map(escaped).join(BETWEEN) + END

/** Without its accents, as in keys and where somebody types without them. */
const plain = (text: string) => text.normalize('NFD').replace(/\p{M}/gu, '').replace(/ø/gi, 'o').replace(/ß/g, 'ss')

/** Plain signs in their order, anything between them: how other letters become lower case is for the database's language to say, and _ and % mean something to LIKE. */
const hintOf = (texts: readonly string[]): string => {
  const runs = texts.flatMap((text) => text.match(/[A-Za-z0-9@.+-]+/g) ?? [])
  return ['', ...runs.map((run) => run.toLowerCase()), ''].join('%')
}

/** "Hanna Vale", "Vale, Hanna", and as one word in keys. */
function namePatterns(name: string): Part[] {
  return [name, plain(name)].flatMap((spelt) => {
    const words = wordsOf(spelt)
    const last = words.at(-1)
    if (words.length < 2 || last === undefined) return []
    return [words, [last, ...words.slice(0, -1)]].map((order) => ({ pattern: joined(order), hint: hintOf(order) }))
  })
}

function phonePattern(phone: string): Part[] {
  const digits = phone.replace(/\D/g, '')
  if (digits.length < LEAST_DIGITS) return []
  const own = [...digits.slice(-OWN_DIGITS)]
  const pattern = `(?<![0-9])(?:[0-9]{1,3}${BETWEEN})?${own.join(BETWEEN)}(?![0-9])`
  return [{ pattern, hint: hintOf(own) }]
}

const emailPattern = (email: string): Part[] =>
  email.includes('@') ? [{ pattern: `(?<![[:alnum:]._%+-])${escaped(email.trim())}${END}`, hint: hintOf([email]) }] : []

const either = (parts: readonly Part[]): Search | null =>
  parts.length === 0
    ? null
    : { pattern: [...new Set(parts.map((one) => one.pattern))].join('|'), hints: [...new Set(parts.map((one) => one.hint))] }

/**
 * Searches that find what names a person. `shared` are names that somebody else on record
 * bears too. A name of one word ("Brandt", "Larkmoor") is a town or a street as well, so it is looked for nearby only.
 */
export function erasePatterns({ names, phones, emails }: Traces, shared: readonly string[]): ErasePatterns {
  const own = names.filter((name) => !shared.includes(name))
  const single = names.filter((name) => wordsOf(name).length === 1 && (wordsOf(name)[0]?.length ?? 0) >= 3)
  const certain = [...phones.flatMap(phonePattern), ...emails.flatMap(emailPattern)]
  return {
    everywhere: either([...own.flatMap(namePatterns), ...certain]),
    nearby: either([
      ...names.filter((name) => shared.includes(name)).flatMap(namePatterns),
      ...single.map((name) => ({ pattern: joined(wordsOf(name)), hint: hintOf(wordsOf(name)) })),
    ]),
  }
}
