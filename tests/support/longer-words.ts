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

const PUSH = /self\.__next_f\.push\(\[1,("(?:[^"\\]|\\.)*")\]\)/g

/** A page of the app with the messages that it brings made 30 % longer. They stand in the data that the framework writes into the page, in pieces. */
export function withLongerWords(html: string): string {
  const data = [...html.matchAll(PUSH)].map(([, text]) => JSON.parse(text ?? '""') as string).join('')
  const at = data.indexOf('"messages":{')
  if (at < 0) throw new Error('the page brings no messages')
  const from = at + '"messages":'.length
  const until = endOfObject(data, from)
  const rooms = JSON.parse(data.slice(from, until)) as Record<string, Record<string, string>>
  const lengthened = Object.fromEntries(
    Object.entries(rooms).map(([room, messages]) => [
      room,
      Object.fromEntries(Object.entries(messages).map(([key, message]) => [key, longerMessage(message)])),
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
