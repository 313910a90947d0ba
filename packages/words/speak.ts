import format, { type FormatOptions, type FormatValues } from 'icu-minify/format'
import { createElement, Fragment, type ReactNode } from 'react'
import type { Room } from './catalogue.ts'
import type { Messages } from './messages-of.ts'
import type { Words } from './words.ts'

/** What a page's words are said from: its messages, and by what plurals are chosen and counts written. */
export type Spoken = { locale: string; messages: Messages; options: FormatOptions }

/** The words of one room on a page. A message that is not there is named in its own place, and in the browser's log. */
export function speak<Name extends Room>({ locale, messages, options }: Spoken, room: Name): Words<Name> {
  const said = messages[room]
  const parts = (key: string, values?: FormatValues<ReactNode>) => {
    try {
      const message = said?.[key]
      if (message === undefined) throw new Error('the page brings no such message')
      return format<ReactNode>(message, locale, values, options)
    } catch (error) {
      console.error(`${room}.${key}`, error)
      return `${room}.${key}`
    }
  }
  const rich = (key: string, values?: FormatValues<ReactNode>) => {
    const all = parts(key, values)
    // Each in its own place: as one list they would want keys.
    return Array.isArray(all) ? createElement(Fragment, null, ...all) : all
  }
  return Object.assign((key: string, values?: FormatValues<ReactNode>) => parts(key, values), {
    rich,
    has: (key: string) => said?.[key] !== undefined,
  }) as unknown as Words<Name>
}
