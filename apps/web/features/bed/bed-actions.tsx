import type { BedPage } from '@almanac/contract/beds'
import { Button } from '@almanac/ui/button'
import { FoldOut } from '@almanac/ui/fold-out'
import { LinkButton } from '@almanac/ui/link-button'
import { PrintButton } from '@almanac/ui/print-button'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { usePermission } from '@/client/providers'

type Props = { bed: BedPage; onInspect: () => void }

/** What can be done with a bed in service, the main act aside. */
function OtherActions({ bed, onInspect }: Props) {
  const words = useWords('bed')
  const mayChange = usePermission('change:site')
  const mayPropose = usePermission('propose:job')
  return (
    <>
      <LinkButton href={`/api/beds/${bed.id}/plan`} file>
        {words('plan')}
      </LinkButton>
      {mayPropose ? (
        <LinkButton href={`/beds/${bed.id}/choice`} link={Link}>
          {words('options')}
        </LinkButton>
      ) : null}
      <LinkButton href={`/whats-wrong?bedId=${bed.id}`} link={Link}>
        {words('whatsWrong')}
      </LinkButton>
      {mayChange ? <Button onClick={onInspect}>{words('inspect')}</Button> : null}
      <PrintButton />
    </>
  )
}

function MainAction({ bed, wide }: { bed: BedPage; wide?: boolean }) {
  const words = useWords('bed')
  const mayPropose = usePermission('propose:job')
  if (!mayPropose || !bed.site) return null
  return (
    <LinkButton href={`/jobs/new?site=${bed.site.id}&bed=${bed.id}`} kind={wide ? 'line' : 'ink'} wide={wide} link={Link}>
      {words('addJob')}
    </LinkButton>
  )
}

/** All actions in a line, where there is room for it. */
export function BedActions(props: Props) {
  return (
    <div className="flex flex-wrap gap-3 max-sm:hidden">
      <OtherActions {...props} />
      <MainAction bed={props.bed} />
    </div>
  )
}

/** On a phone they stand behind the date and the number to call: the main one, and the rest folded away. */
export function BedActionsOnPhone(props: Props) {
  const words = useWords('bed')
  return (
    <div className="mt-4 flex gap-3 sm:hidden">
      <MainAction bed={props.bed} wide />
      <FoldOut
        name={words('moreActions')}
        label="•••"
        className="flex min-h-control w-16 items-center justify-center rounded-sheet border border-ink tracking-widest"
      >
        <div className="flex flex-col gap-2 p-2">
          <OtherActions {...props} />
        </div>
      </FoldOut>
    </div>
  )
}
