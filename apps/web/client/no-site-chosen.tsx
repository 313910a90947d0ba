import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import Link from 'next/link'

/** What a form for a site shows where none was chosen: which, and the way to choose one. */
export function NoSiteChosen({ button }: { button: string }) {
  return (
    <Empty
      title="Choose a site first"
      action={
        <LinkButton href="/sites" kind="ink" link={Link}>
          Choose a site
        </LinkButton>
      }
    >
      Open the site, then choose “{button}” there.
    </Empty>
  )
}
