import type { ReactNode } from 'react'
import type { LinkLike } from './link-like.ts'

export type TextLinkProps = { href: string; link?: LinkLike; strong?: boolean; children: ReactNode }

/** A link in running text or a list. */
export function TextLink({ href, link: Link = 'a', strong, children }: TextLinkProps) {
  return (
    <Link
      href={href}
      className={`underline decoration-edge decoration-1 underline-offset-4 hover:decoration-ink hover:decoration-2 ${strong ? 'font-semibold' : ''}`}
    >
      {children}
    </Link>
  )
}
