import { monthPattern } from './month-names.ts'

export type NoteFactKind = 'rebedded' | 'installed'

const resin = '(?:resin|bed|media|beads)'
const done = '(?:changed|replaced|renewed|swapped|exchanged|redone)'

/** Words for an event that did happen, in lower-case text. */
export const eventPattern = new RegExp(
  `(?<rebedded>\\bre-?\\s?bed(?:ded|s|ding)?\\b|\\bre-?resin(?:ed)?\\b|\\b(?:new|fresh)\\s+${resin}\\b(?:\\s+(?:installed|fitted|put in|in))?|\\b${resin}\\s+(?:was\\s+|were\\s+|has been\\s+|last\\s+)?${done}\\b|\\b${resin}\\s+(?:change|replacement|swap|renewal)\\b|\\b${done}\\s+(?:the\\s+|old\\s+|out\\s+)*${resin}\\b|\\bnew\\s+${resin}\\b)` +
    '|(?<installed>\\b(?:install(?:ed|ation)?|inst\\.|put in|fitted|new\\s+(?:softener|unit|system|install(?:ation)?))(?![a-z]))',
  'g',
)

/** Words that turn an event into a plan, a wish, an offer or a denial. */
export const notDone =
  /\b(?:no|not|never|without|hasn't|didn't|wasn't|isn't|won't|needs?|needed|needing|due|quotes?|quoted|quotation|estimate[ds]?|bid|wants?|wanted|should|plan(?:s|ned)?|schedul(?:e|ed)|declined?|refused|recommend(?:s|ed)?|offer(?:s|ed)?|will|would|may(?=\s+(?:need|want|be|have|do)\b)|might|asked?|asking|if|next|future|discuss(?:ed)?|consider(?:ing)?|postponed?|cancell?ed|call(?:ed)? off|overdue|suggest(?:ed)?|expects?|expected|booked|proposed?|until|before any)\b/

/** Things other than the softener that get installed. */
export const otherThing =
  /\b(?:valves?|filters?|carbon|r\.?o\.?|reverse osmosis|uv|lamp|heater|boiler|pumps?|bypass|meter|motor|timer|control(?:ler)?|head|brine|float|tubes?|faucets?|taps?|pistons?|seals?|sump|washer|dishwasher|kitchen|bathroom|roof|regulator|prv|injector|screen|cap|hose|drain)\b/

/** Words showing that the digits nearby are no date. */
export const noDateNear =
  /\b(?:phone|ph|tel|call|cell|mobile|fax|ext|invoice|inv|order|ref|model|serial|s\/n|sn|po|ticket|job|account|acct|house|number|no)\b\.?\s*#?:?\s*$|[#$£€]\s*$/

const year = "(?:(?:19|20)\\d{2}|['’]\\d{2})"
const looseYear = `(?:(?:19|20)\\d{2}|['’]?\\d{2})`
const qualifier =
  '(?:before|after|pre-?|since|by|ca\\.?|circa|about|around|approx\\.?|~|early|mid|late|end of|spring|summer|autumn|fall|winter)[\\s-]*'

/** A date inside running text; what it means is for `readDay` to say. A number within a longer number, or before a unit, is none. */
export const dateInText = new RegExp(
  `(?<![\\d/.,$£€#-])(?:${qualifier}){0,2}(?:\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2}[/.-]\\d{1,2}[/.-]${looseYear}|\\d{1,2}(?:st|nd|rd|th)?\\s+(?:of\\s+)?${monthPattern}[\\s,]*${year}|${monthPattern}\\s*\\d{1,2}(?:st|nd|rd|th)?\\s*,?\\s+${year}|${monthPattern}(?:[\\s,-]*${year}|-\\d{2}|\\s\\d{1,2}(?!\\d))|\\d{1,2}\\s?/\\s?${looseYear}|${year})(?!\\d|[/.-]\\d|[\\s-]*\\d{3,}|\\s*(?:gal|mg|ppm|gpg|gr|grains?|sq|ft|psi|lbs?|usd|x\\s?\\d|%))\\??`,
  'gi',
)
