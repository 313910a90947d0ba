import type { ReactNode } from 'react'
import type { LinkLike } from './link-like.ts'

/** One entry of the main navigation. `current` marks the page being shown. */
export type NavItem = { href: string; label: string; current?: boolean }

export type AppFrameProps = {
  /** Product name, shown at the left and leading home. */
  product: string
  homeHref?: string
  nav: readonly NavItem[]
  /** Name of the company being worked in, and the person's role there. */
  company?: string
  role?: string
  /** Account menu, bell or the like, at the far right. */
  account?: ReactNode
  link?: LinkLike
  children: ReactNode
}

/** The sheet every office page is drawn on: skip link, header, navigation and main area. */
export function AppFrame({ product, homeHref = '/', nav, company, role, account, link: Link = 'a', children }: AppFrameProps) {
  return (
    <div className="flex min-h-dvh flex-col bg-paper text-ink">
      <a href="#main" className="absolute -top-20 left-4 z-10 border border-ink bg-sheet px-4 py-2 focus:top-2">
        Skip to the page
      </a>
      <header className="print:hidden grid grid-cols-[1fr_auto] items-baseline gap-x-7 border-b border-ink px-4 pt-3 sm:px-9 sm:pt-4 lg:grid-cols-[auto_1fr_auto]">
        <Link href={homeHref} className="pb-3 text-lead font-semibold whitespace-nowrap">
          {product}
        </Link>
        <div className="flex items-baseline gap-4 pb-3 text-soft lg:order-3">
          {company ? (
            <span className="max-w-[38vw] truncate text-right" title={company}>
              {company}
              {role ? <span className="max-sm:hidden"> · {role}</span> : null}
            </span>
          ) : null}
          {account}
        </div>
        <nav aria-label="Main" className="col-span-2 lg:order-2 lg:col-span-1">
          <ul className="flex flex-wrap gap-x-5">
            {nav.map((item) => (
              <li key={item.href}>
                <Link
                  href={item.href}
                  aria-current={item.current ? 'page' : undefined}
                  className={`-mb-px block border-b-3 pt-1 pb-2 lg:pb-3 ${
                    item.current ? 'border-ink text-ink' : 'border-transparent text-soft hover:border-line hover:text-ink'
                  }`}
                >
                  {item.label}
                </Link>
              </li>
            ))}
          </ul>
        </nav>
      </header>
      <main id="main" tabIndex={-1} className="w-full max-w-[1600px] grow px-4 py-6 outline-none sm:px-9 sm:py-7">
        {children}
      </main>
    </div>
  )
}
