import type { LinkLike } from './link-like.ts'

/** One page to go to. `current` marks the page being shown. */
export type NavItem = { href: string; label: string; current?: boolean }

/** Pages as a list of links, each a line high enough for a finger. */
export function NavList({ items, link: Link = 'a', columns = false }: { items: readonly NavItem[]; link?: LinkLike; columns?: boolean }) {
  return (
    <ul className={columns ? 'grid grid-cols-2 gap-x-5 md:grid-cols-3' : ''}>
      {items.map((item) => (
        <li key={item.href}>
          <Link
            href={item.href}
            aria-current={item.current ? 'page' : undefined}
            className={`flex min-h-control items-center px-2 hover:bg-wash ${item.current ? 'border-l-3 border-ink font-semibold' : ''}`}
          >
            {item.label}
          </Link>
        </li>
      ))}
    </ul>
  )
}
