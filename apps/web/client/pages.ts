import type { Me } from '@almanac/contract/session'
import type { Permission } from '@almanac/records/permission'
import type { Role } from '@almanac/records/role'
import type { Words } from '@almanac/words/words'

type PageWords = Words<'page'>

const PAGES = [
  { href: '/coming-due', permission: 'read:due' },
  { href: '/coming-due?view=5-years', permission: 'read:due' },
  { href: '/day-sheets', permission: 'book:visit' },
  { href: '/week', permission: 'book:visit' },
  { href: '/jobs', permission: 'read:job' },
  { href: '/rounds', permission: 'propose:job' },
  { href: '/calls', permission: 'record:call' },
  { href: '/sites', permission: 'read:site' },
  { href: '/sites/new', permission: 'change:site' },
  { href: '/ask-next', permission: 'change:site' },
  { href: '/whats-wrong', permission: 'read:site' },
  { href: '/which-tank', permission: 'read:site' },
  { href: '/water', permission: 'read:water' },
  { href: '/reminders', permission: 'read:reminder' },
  { href: '/reminders/texts', permission: 'read:reminder' },
  { href: '/from-tablets', permission: 'book:visit' },
  { href: '/stores', permission: 'read:stores' },
  { href: '/crews', permission: 'manage:crews' },
  { href: '/policy', permission: 'judge:forecast' },
  { href: '/track-record', permission: 'judge:forecast' },
  { href: '/imports', permission: 'run:import' },
  { href: '/archive', permission: 'change:site' },
  { href: '/changes', permission: 'manage:company' },
  { href: '/exports', permission: 'manage:company' },
  { href: '/firm', permission: 'manage:company' },
  { href: '/sessions', permission: null },
] as const satisfies readonly { href: string; permission: Permission | null }[]
const TODAY = { href: '/today', permission: 'close:visit' } as const

type Href = (typeof PAGES)[number]['href'] | typeof TODAY.href

/** A page one can go to by the navigation or the search; `also` are other words that people look for it by. */
export type Page = { href: Href; label: string; also: string }

/** What each role works in most, six at most; the rest stands behind "More". */
const FIRST: Record<Role, readonly string[]> = {
  owner: ['/coming-due', '/sites', '/day-sheets', '/reminders', '/stores', '/water'],
  dispatcher: ['/day-sheets', '/week', '/calls', '/jobs', '/sites', '/whats-wrong'],
  technician: ['/today', '/sites', '/which-tank', '/whats-wrong', '/stores'],
}
/** Reached from elsewhere, so only the search leads to them. */
const ONLY_FOUND = ['/sites/new', '/sessions', '/reminders/texts']

/** The pages a person may open. */
export function pagesFor({ role, permissions }: Pick<Me, 'role' | 'permissions'>, words: PageWords): Page[] {
  const all = role === 'technician' ? [TODAY, ...PAGES] : PAGES
  return all
    .filter((page) => page.permission === null || permissions.includes(page.permission))
    .map(({ href }) => ({ href, label: words(href), also: words(`${href}/also`) }))
}

/** The navigation of a role: its own pages first, then the others. `path` is the page being shown. */
export function navigationFor(me: Pick<Me, 'role' | 'permissions'>, path: string, words: PageWords) {
  const pages = pagesFor(me, words)
  const item = ({ href, label }: Page) => ({ href, label, current: path === href || path.startsWith(`${href}/`) })
  const first = FIRST[me.role]
  return {
    nav: first.flatMap((href) => pages.filter((page) => page.href === href)).map(item),
    more: pages.filter((page) => !first.includes(page.href) && !ONLY_FOUND.includes(page.href)).map(item),
  }
}
