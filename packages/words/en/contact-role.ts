import { contactRoleWords } from '@almanac/records/contact-role'

/** The record's own words: other languages follow them. */
export const contactRole = contactRoleWords
