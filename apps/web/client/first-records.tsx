import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { usePermission } from './providers.tsx'

/** What an empty list of sites or beds leads to: the firm's own list for those who may import, one site by hand for those who may add. */
export function FirstRecords({ title }: { title: string }) {
  const words = useWords('firstRecords')
  const mayImport = usePermission('run:import')
  const mayAdd = usePermission('change:site')
  return (
    <Empty
      title={title}
      action={
        mayAdd ? (
          <span className="flex flex-wrap gap-3">
            {mayImport ? (
              <LinkButton href="/imports" kind="ink" link={Link}>
                {words('importList')}
              </LinkButton>
            ) : null}
            <LinkButton href="/sites/new" kind={mayImport ? 'line' : 'ink'} link={Link}>
              {words('addSite')}
            </LinkButton>
          </span>
        ) : null
      }
    >
      {words(mayAdd ? 'start' : 'officeAdds')}
    </Empty>
  )
}
