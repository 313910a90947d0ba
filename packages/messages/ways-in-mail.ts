import type { Words } from '@almanac/words/words'

type Letter = { subject: string; text: string }
type Said = Words<'wayInMail'>

const letter = (subject: string, ...parts: string[]): Letter => ({ subject, text: `${parts.join('\n\n')}\n` })

/** To someone whom an owner invites. */
export const invitationMail = (
  words: Said,
  { name, by, company, url }: { name: string; by: string; company: string; url: string },
): Letter =>
  letter(
    words('invitation', { by, company }),
    ...[words('hello', { name }), words('invitation/why', { by, company }), url, words('invitation/else', { company })],
  )

/** To someone who forgot their password. */
export const passwordMail = (words: Said, { name, url }: { name: string; url: string }): Letter =>
  letter(words('password'), words('hello', { name }), words('password/why'), url, words('password/else'))

/** To someone who wants to set up a company. */
export const setUpMail = (words: Said, { url }: { url: string }): Letter =>
  letter(words('setUp'), words('helloYou'), words('setUp/why'), url, words('setUp/else'))

/** To the new address of someone who changes theirs. */
export const newEmailMail = (words: Said, { name, url }: { name: string; url: string }): Letter =>
  letter(words('newEmail'), words('hello', { name }), words('newEmail/why'), url, words('newEmail/else'))

/** To the old address, once it is changed. */
export const emailChangedMail = (words: Said): Letter => letter(words('emailChanged'), words('helloYou'), words('emailChanged/why'))
