/** Codes that say of the address itself that no mail reaches it: RFC 3463, 3.2 (addressing) and 3.3 (mailbox disabled). */
const DEAD = /^5\.(1\.\d+|2\.1)$/

/** Whether a mail that came back says that its address takes none: a full mailbox or a filter says nothing of the address. */
export const isDeadAddress = (status: string | null): boolean => status !== null && DEAD.test(status)

const WORDS: readonly [RegExp, string][] = [
  [DEAD, 'The address doesn’t take mail'],
  [/^5\.2\.2$/, 'The mailbox is full'],
  [/^5\.2\.3$|^5\.3\.4$/, 'The mail was too large'],
  [/^5\.7\./, 'The other side refused it'],
]

/** Why a mail came back, as a sentence. `status` is a code of RFC 3463, as 5.1.1. */
export function bounceWords(status: string | null): string {
  if (status === null) return 'It came back without a reason.'
  return `${WORDS.find(([form]) => form.test(status))?.[1] ?? 'It came back'} (${status}).`
}
