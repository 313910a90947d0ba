import { expect, type Locator } from '@playwright/test'

/** One table for every form with a number: what each says of a text is what it means by it. The two spaces are a plain and a no-break one. */
const TEXTS = ['1 1/2', '1½', '1,200', '1.5', '1,5', '1 200', '1\u00a0200', '', 'abc', '−3', '99999'] as const
type Text = (typeof TEXTS)[number]
/** The sentence under the field, by text; what is left out is taken without a word. */
type Says = Partial<Record<Text, RegExp>>

export const NO_NUMBER: Says = { abc: /“abc” is not a number/, '−3': /can’t be below zero/ }
export const twelveHundred = (says: RegExp): Says => ({ '1,200': says, '1 200': says, '1\u00a0200': says })
export const halves = (says: RegExp): Says => ({ '1 1/2': says, '1½': says, '1.5': says, '1,5': says })
export const HARDNESS: Says = { ...NO_NUMBER, ...twelveHundred(/1,200 gpg can’t be right/), '99999': /99,999 gpg can’t be right/ }
export const RESIN: Says = { abc: NO_NUMBER.abc, '−3': /below zero/, ...twelveHundred(/can’t be right/), '99999': /can’t be right/ }

/** What is said to be wrong with a field. */
export const saidOf = (field: Locator) =>
  field.evaluate((input) => {
    if (input.getAttribute('aria-invalid') !== 'true') return ''
    const ids = (input.getAttribute('aria-describedby') ?? '').split(' ')
    return document.getElementById(ids.find((id) => id.endsWith('-error')) ?? '')?.textContent ?? ''
  })

/** Types each text, leaves the field, and looks at what is said of it; the text stays as typed. */
export async function drive(field: Locator, says: Says): Promise<void> {
  const at = (await field.evaluate((input) => (input as HTMLInputElement).labels?.[0]?.textContent)) ?? 'a field'
  for (const text of TEXTS) {
    await field.fill(text)
    await field.blur()
    const said = await saidOf(field)
    const wanted = says[text]
    if (wanted) expect.soft(said, `${at}: “${text}”`).toMatch(wanted)
    else expect.soft(said, `${at}: “${text}”`).toBe('')
  }
}
