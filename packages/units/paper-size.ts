import type { Display } from './display.ts'

/** Where letters are written on US letter paper: Unicode CLDR 46, supplemental/measurementData, paperSize US-Letter. Everywhere else on A4. */
const US_LETTER = new Set('BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' '))

/** The paper of a locale's region; the language it is read in has no say. */
export const paperSize = ({ locale }: Pick<Display, 'locale'>): 'LETTER' | 'A4' =>
  US_LETTER.has(new Intl.Locale(locale).maximize().region ?? '') ? 'LETTER' : 'A4'
