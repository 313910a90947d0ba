import { compileMessages } from '@almanac/words/compile-messages'
import { en } from '@almanac/words/en/all'
import { expect, test } from 'vitest'
import { longerMessage, withLongerWords } from '../support/longer-words.ts'
import { givenTo, piecesOf } from '../support/message-parts.ts'

test('every message is at least 30 % longer in its texts, and keeps its values, plurals and tags', () => {
  for (const [room, messages] of Object.entries(en))
    for (const [key, message] of Object.entries(messages as Record<string, string>)) {
      const longer = longerMessage(message)
      const texts = (one: string) =>
        piecesOf(one)
          .map((piece) => piece.trim())
          .filter((piece) => piece.length > 1)
      const length = (one: string) => texts(one).reduce((sum, piece) => sum + piece.length, 0)
      expect(length(longer), `${room}.${key}`).toBeGreaterThanOrEqual(1.3 * length(message))
      expect(givenTo(longer), `${room}.${key}`).toEqual(givenTo(message))
    }
})

test('a lengthened plural still has its cases and its number', () => {
  const longer = longerMessage('{count, plural, one {1 entry} other {# entries}} here')
  expect(longer).toMatch(/^\{count, ?plural, ?one ?\{1 .*\} ?other ?\{# .*\}\}/)
  expect(longer).not.toContain('entries')
})

const MESSAGE = 'Close {x} with <b>{count, plural, one {1 entry} other {# entries}}</b>'
test('a page’s messages are lengthened wherever the framework parted its data', () => {
  const data = `0:["$","div",null,{"messages":${JSON.stringify(compileMessages({ common: { close: MESSAGE } }))},"other":"Close"}]`
  const [first, second] = [data.slice(0, 40), data.slice(40)]
  const page = `<p>Close</p><script>self.__next_f.push([1,${JSON.stringify(first)}])</script><script>self.__next_f.push([1,${JSON.stringify(second)}])</script>`
  const longer = withLongerWords(page)
  expect(longer).toContain(JSON.stringify(JSON.stringify(compileMessages({ common: { close: longerMessage(MESSAGE) } }))).slice(1, -1))
  expect(longer).not.toContain('entries')
  expect(longer).toContain('<p>Close</p>')
  expect(() => withLongerWords('<p>none</p>')).toThrow('brings no messages')
})
