import type { ReactNode } from 'react'
import { type ButtonKind, buttonClass } from './button-class.ts'
import type { LinkLike } from './link-like.ts'

export type LinkButtonProps = { href: string; kind?: ButtonKind; wide?: boolean; link?: LinkLike; children: ReactNode }

/** A link to another page that looks like a button. */
export function LinkButton({ href, kind = 'line', wide, link: Link = 'a', children }: LinkButtonProps) {
  return (
    <Link href={href} className={buttonClass(kind, wide)}>
      {children}
    </Link>
  )
}
