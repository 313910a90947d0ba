import type { Finding } from '@almanac/contract/find'
import { nearTerms } from '@almanac/service-rules/search/near-terms'
import { searchWords } from '@almanac/service-rules/search/search-tokens'
import type { AmountDisplay } from '@almanac/units/display'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'
import type { Words } from '@almanac/words/words'
import type { BedTexts } from '../bed-facts-words.ts'
import type { Page } from '../pages.ts'

/** One line of the answers: where it leads, what it is, and what tells it from others like it. */
export type FindOption = { href: string; what: string; beside: string; phone?: string }
export type FindGroup = { title: string; options: FindOption[] }

/** What the answers are called. */
export type FindWords = { find: Words<'find'>; kinds: Words<'jobKind'>; states: Words<'jobState'>; bed: BedTexts }

const parts = (...texts: (string | null | undefined)[]) => texts.filter(Boolean).join(', ')

function optionOf(finding: Finding, display: AmountDisplay & DayDisplay, words: FindWords): FindOption {
  const { siteLabel, town } = finding
  switch (finding.of) {
    case 'person':
      return {
        href: `/sites/${finding.siteId}`,
        what: finding.name,
        beside: parts(siteLabel === finding.name ? null : siteLabel, finding.street, town),
        phone: finding.phone ?? undefined,
      }
    case 'address':
      return {
        href: `/sites/${finding.siteId}`,
        what: parts(siteLabel, town),
        beside: parts(finding.street, finding.customerName === siteLabel ? null : (finding.customerName ?? words.find('noCustomer'))),
      }
    case 'tank':
      return {
        href: `/beds/${finding.bedId}`,
        what: `${words.bed.tank(finding.tank)} · ${siteLabel}`,
        beside: parts(finding.softenerLabel, town),
      }
    case 'job': {
      const { kind, state, visitDay } = finding.job
      const said = words.states(state)
      const when = visitDay ? words.find('stateOn', { state: said, day: formatDay(visitDay, display) }) : said
      return { href: `/jobs/${finding.jobId}`, what: `${words.kinds(kind)} · ${siteLabel}`, beside: parts(when, town) }
    }
  }
}

const TITLES = { person: 'people', address: 'addresses', tank: 'tanks', job: 'jobs' } as const satisfies Record<Finding['of'], string>

/** The answers by kind, in the order they came, and the pages that were meant: first where the name was begun as typed, last otherwise. */
export function findGroups(
  findings: readonly Finding[],
  pages: readonly Page[],
  query: string,
  display: AmountDisplay & DayDisplay,
  words: FindWords,
): FindGroup[] {
  const groups: FindGroup[] = []
  for (const finding of findings) {
    const title = words.find(TITLES[finding.of])
    const option = optionOf(finding, display, words)
    const group = groups.find((one) => one.title === title)
    if (group) group.options.push(option)
    else groups.push({ title, options: [option] })
  }
  const met = pagesMet(pages, query)
  if (met.length === 0) return groups
  const pageGroup = { title: words.find('pages'), options: met.map((page) => ({ href: page.href, what: page.label, beside: '' })) }
  const named = met.some((page) => page.label.toLowerCase().startsWith(query.trim().toLowerCase()))
  return named ? [pageGroup, ...groups] : [...groups, pageGroup]
}

const SHORTEST_WORD = 3
const MOST_PAGES = 4

/** Pages that each word meets, with one slip forgiven; the name counts before the other words it goes by. */
export function pagesMet(pages: readonly Page[], query: string): Page[] {
  const terms = searchWords(query)
  if (terms.join('').length < SHORTEST_WORD) return []
  const meets = (words: readonly string[]) =>
    terms.every((term) => [term, ...nearTerms(term)].some((spelling) => words.some((word) => word.startsWith(spelling))))
  const byName = pages.filter((page) => meets(searchWords(page.label)))
  const byOther = pages.filter((page) => !byName.includes(page) && meets(searchWords(`${page.label} ${page.also}`)))
  return [...byName, ...byOther].slice(0, MOST_PAGES)
}
