import 'server-only'
import { oneOf } from '@almanac/records/choices'
import { type Language, languages } from '@almanac/records/language'
import { procedureAsks } from '@almanac/records/procedure-ask'
import { measurePath } from './public-paths.ts'

/** The language that an owner’s page was read in; null for the company’s. */
export const languageOfForm = (form: URLSearchParams | FormData): Language | null => oneOf(languages, textOf(form, 'l'))

/** A field of a form as text; empty for none, or for a file. */
export function textOf(form: URLSearchParams | FormData, name: string): string {
  const value = form.get(name)
  return typeof value === 'string' ? value : ''
}

/** What was answered at a step, by the question. */
export const answersOf = (form: URLSearchParams | FormData): Record<string, string> =>
  Object.fromEntries(procedureAsks.map((ask) => [ask, textOf(form, `ask/${ask}`)]).filter(([, answer]) => answer !== ''))

/** The owner’s page again, after a form was taken or not. */
export function backToGuide(token: string, language: Language | null, more: Record<string, string> = {}): Response {
  const query = new URLSearchParams({ ...more, ...(language && { l: language }) }).toString()
  return new Response(null, { status: 303, headers: { location: `${measurePath(token)}${query ? `?${query}` : ''}` } })
}
