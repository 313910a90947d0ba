import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser'
import { printAST } from '@formatjs/icu-messageformat-parser/printer.js'
import { pseudoLocalizeString } from 'pseudo-localization'

/** A piece of text at least 30 % longer, its vowels doubled by the library's pseudo-locale; what that leaves short is padded. */
function longer(piece: string): string {
  const words = piece.trim()
  if (words.length < 2) return piece
  const pseudo = pseudoLocalizeString(words)
  const lacking = Math.ceil(words.length * 1.3) - pseudo.length
  return piece.replace(words, lacking > 0 ? pseudo + 'õ'.repeat(lacking) : pseudo)
}

/** A message in ICU syntax with its texts 30 % longer and its values, plurals and tags left alone. */
export function longerMessage(message: string): string {
  const walk = (parts: readonly MessageFormatElement[]) => {
    for (const part of parts) {
      if (part.type === TYPE.literal) part.value = longer(part.value)
      if (part.type === TYPE.tag) walk(part.children)
      if (part.type === TYPE.plural || part.type === TYPE.select) for (const option of Object.values(part.options)) walk(option.value)
    }
  }
  const parts = parse(message)
  walk(parts)
  return printAST(parts)
}

/** A message as pages bring it: text, or a list of texts, values, plurals and tags (icu-minify). */
type Compiled = string | readonly unknown[]

/** As `longerMessage`, of a message as pages bring it. */
function longerCompiled(message: Compiled): Compiled {
  return typeof message === 'string' ? longer(message) : message.map(longerPart)
}

function longerPart(part: unknown): unknown {
  if (typeof part === 'string') return longer(part)
  if (!Array.isArray(part)) return part
  const [name, kind, ...rest] = part as unknown[]
  if (kind === undefined) return part
  // A tag around its parts; a number of its own would be the place where a plural says its count.
  if (typeof kind !== 'number' || kind === 0) return [name, ...[kind, ...rest].map(longerPart)]
  const [cases] = rest
  if (typeof cases !== 'object' || cases === null) return part
  const longerCases = Object.entries(cases).map(([form, said]) => [form, said === 0 ? said : longerCompiled(said as Compiled)])
  return [name, kind, Object.fromEntries(longerCases)]
}

const PUSH = /self\.__next_f\.push\(\[1,("(?:[^"\\]|\\.)*")\]\)/g

/** A page of the app with the messages that it brings made 30 % longer. They stand in the data that the framework writes into the page, in pieces. */
export function withLongerWords(html: string): string {
  const data = [...html.matchAll(PUSH)].map(([, text]) => JSON.parse(text ?? '""') as string).join('')
  const at = data.indexOf('"messages":{')
  if (at < 0) throw new Error('the page brings no messages')
  const from = at + '"messages":'.length
  const until = endOfObject(data, from)
  const rooms = JSON.parse(data.slice(from, until)) as Record<string, Record<string, Compiled>>
  const lengthened = Object.fromEntries(
    Object.entries(rooms).map(([room, messages]) => [
      room,
      Object.fromEntries(Object.entries(messages).map(([key, message]) => [key, longerCompiled(message)])),
    ]),
  )
  const all = data.slice(0, from) + JSON.stringify(lengthened) + data.slice(until)
  const script = JSON.stringify(all).replaceAll('<', '\\u003c')
  let first = true
  return html.replace(PUSH, () => {
    const part = first ? `self.__next_f.push([1,${script}])` : 'self.__next_f.push([1,""])'
    first = false
    return part
  })
}

function endOfObject(text: string, from: number): number {
  let depth = 0
  let quoted = false
  for (let i = from; i < text.length; i++) {
    const c = text[i]
    if (quoted) {
      if (c === '\\') i++
      else if (c === '"') quoted = false
    } else if (c === '"') quoted = true
    else if (c === '{') depth++
    else if (c === '}' && --depth === 0) return i + 1
  }
  throw new Error('the messages do not end')
}
