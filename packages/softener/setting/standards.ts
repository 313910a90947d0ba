/** Standards and books that the card names as its sources, alike in every language. */
export const TEN_STATES = 'Ten States Standards §4.4.2'
export const RINSE_SOURCE = 'UFC 3-240-13FN; Davis 2010'
export const WATER_SOURCE = 'Davis 2010; UFC 3-240-13FN; Ten States Standards §4.4.2'
export const PUBLIC_SOURCE = 'Ten States Standards §4.4.2; Virginia 12 VAC 5-590-900'
