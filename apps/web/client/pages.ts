import type { Me } from '@almanac/contract/session'
import type { Permission } from '@almanac/records/permission'
import type { Role } from '@almanac/records/role'

/** A page one can go to by the navigation or the search. */
export type Page = {
  href: string
  label: string
  permission: Permission | null
  /** Other words people look for it by. */
  also: string
}

const PAGES: readonly Page[] = [
  { href: '/coming-due', label: 'Coming due', permission: 'read:due', also: 'forecast beds months call' },
  { href: '/coming-due?view=5-years', label: 'Rebeds by month', permission: 'read:due', also: 'plan year years' },
  { href: '/day-sheets', label: 'Day sheets', permission: 'book:visit', also: 'today week calendar visits drives' },
  { href: '/jobs', label: 'Jobs', permission: 'read:job', also: 'to book waiting' },
  { href: '/sites', label: 'Sites', permission: 'read:site', also: 'customers addresses' },
  { href: '/sites/new', label: 'Add a site', permission: 'change:site', also: 'new customer' },
  { href: '/ask-next', label: 'Ask at the next call', permission: 'change:site', also: 'questions missing' },
  { href: '/whats-wrong', label: 'What is wrong?', permission: 'read:site', also: 'fault diagnosis emergency beads' },
  { href: '/which-tank', label: 'Which tank?', permission: 'read:site', also: 'size measure tape' },
  { href: '/water', label: 'Water', permission: 'read:water', also: 'supply well hardness chlorine' },
  { href: '/reminders', label: 'Reminders', permission: 'read:reminder', also: 'messages mail letters' },
  { href: '/stores', label: 'Stores', permission: 'read:stores', also: 'stock orders resin parts' },
  { href: '/crews', label: 'Crews', permission: 'manage:crews', also: 'people vehicles shifts away' },
  { href: '/policy', label: 'Best age to rebed', permission: 'judge:forecast', also: 'policy costs when to act' },
  { href: '/track-record', label: 'Track record', permission: 'judge:forecast', also: 'how good accuracy' },
  { href: '/imports', label: 'Import', permission: 'run:import', also: 'file spreadsheet excel csv list' },
  { href: '/firm', label: 'Company', permission: 'manage:company', also: 'figures settings prices yard' },
  { href: '/sessions', label: 'Signed-in devices', permission: null, also: 'devices sessions calendar sign out' },
]
const TODAY: Page = { href: '/today', label: "Today's work", permission: 'close:visit', also: 'visits next' }

/** What each role works in most, six at most; the rest stands behind "More". */
const FIRST: Record<Role, readonly string[]> = {
  owner: ['/coming-due', '/sites', '/day-sheets', '/reminders', '/stores', '/water'],
  dispatcher: ['/day-sheets', '/jobs', '/sites', '/whats-wrong', '/crews', '/stores'],
  technician: ['/today', '/sites', '/which-tank', '/whats-wrong', '/stores'],
}
/** Reached from elsewhere, so only the search leads to them. */
const ONLY_FOUND = ['/sites/new', '/sessions']

/** The pages a person may open. */
export function pagesFor({ role, permissions }: Pick<Me, 'role' | 'permissions'>): Page[] {
  const all = role === 'technician' ? [TODAY, ...PAGES] : PAGES
  return all.filter((page) => page.permission === null || permissions.includes(page.permission))
}

/** The navigation of a role: its own pages first, then the others. `path` is the page being shown. */
export function navigationFor(me: Pick<Me, 'role' | 'permissions'>, path: string) {
  const pages = pagesFor(me)
  const item = ({ href, label }: Page) => ({ href, label, current: path === href || path.startsWith(`${href}/`) })
  const first = FIRST[me.role]
  return {
    nav: first.flatMap((href) => pages.filter((page) => page.href === href)).map(item),
    more: pages.filter((page) => !first.includes(page.href) && !ONLY_FOUND.includes(page.href)).map(item),
  }
}
