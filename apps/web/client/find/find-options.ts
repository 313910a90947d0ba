import type { Finding } from '@almanac/contract/find'
import { jobKindWords } from '@almanac/records/job-kind'
import { nearTerms } from '@almanac/service-rules/search/near-terms'
import { searchWords } from '@almanac/service-rules/search/search-tokens'
import type { AmountDisplay } from '@almanac/units/display'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'
import { tankWords } from '../bed-facts-words.ts'
import type { Page } from '../pages.ts'

/** One line of the answers: where it leads, what it is, and what tells it from others like it. */
export type FindOption = { href: string; what: string; beside: string; phone?: string }
export type FindGroup = { title: string; options: FindOption[] }

const parts = (...texts: (string | null | undefined)[]) => texts.filter(Boolean).join(', ')

function optionOf(finding: Finding, display: AmountDisplay & DayDisplay): FindOption {
  const { siteLabel, town } = finding
  switch (finding.of) {
    case 'person':
      return { href: `/sites/${finding.siteId}`, what: finding.name, beside: parts(siteLabel, town), phone: finding.phone ?? undefined }
    case 'address':
      return { href: `/sites/${finding.siteId}`, what: parts(siteLabel, town), beside: finding.customerName ?? 'No customer' }
    case 'tank':
      return {
        href: `/beds/${finding.bedId}`,
        what: `${tankWords(finding.tank, display)} · ${siteLabel}`,
        beside: parts(finding.softenerLabel, town),
      }
    case 'job': {
      const { kind, state, visitDay } = finding.job
      const when = visitDay ? `${state.replace('-', ' ')} ${formatDay(visitDay, display)}` : state.replace('-', ' ')
      return { href: `/jobs/${finding.jobId}`, what: `${jobKindWords[kind]} · ${siteLabel}`, beside: parts(when, town) }
    }
  }
}

const TITLES: Record<Finding['of'], string> = { person: 'People', address: 'Addresses', tank: 'Tanks', job: 'Jobs' }

/** The answers by kind, in the order they came, and the pages that were meant: first where the name was begun as typed, last otherwise. */
export function findGroups(
  findings: readonly Finding[],
  pages: readonly Page[],
  query: string,
  display: AmountDisplay & DayDisplay,
): FindGroup[] {
  const groups: FindGroup[] = []
  for (const finding of findings) {
    const title = TITLES[finding.of]
    const option = optionOf(finding, display)
    const group = groups.find((one) => one.title === title)
    if (group) group.options.push(option)
    else groups.push({ title, options: [option] })
  }
  const met = pagesMet(pages, query)
  if (met.length === 0) return groups
  const pageGroup = { title: 'Pages', options: met.map((page) => ({ href: page.href, what: page.label, beside: '' })) }
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
