/** The most numbers that a contact has behind the first. */
export const MOST_OTHER_PHONES = 8

const BETWEEN = '; '

/** A contact's numbers as they are on record: the first by itself, the others in one text, so that an import's fact is one value. This file alone writes and reads it. */
export type OnRecord = { phone: string | null; otherPhone: string | null }

/** The numbers behind the first. */
export const otherPhonesOf = ({ otherPhone }: Pick<OnRecord, 'otherPhone'>): string[] =>
  (otherPhone ?? '').split(BETWEEN.trim()).flatMap((one) => one.trim() || [])

/** All numbers, the first one first. */
export const phonesOf = (contact: OnRecord): string[] => [contact.phone, ...otherPhonesOf(contact)].flatMap((one) => one || [])

/** The numbers behind the first as they go on record; null for none. The same number twice is one. */
export const asOtherPhone = (phones: readonly string[]): string | null =>
  [...new Set(phones.flatMap((one) => one.replaceAll(BETWEEN.trim(), ' ').trim() || []))].join(BETWEEN) || null
