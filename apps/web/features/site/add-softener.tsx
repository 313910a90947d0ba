'use client'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { SoftenerFields, useSoftener } from '@/client/softener-fields'
import { useCommand } from '@/client/use-command'
import { useToday } from '@/client/use-today'

/** A further softener at the site. */
export function NewSoftenerForm({ siteId, onClose }: { siteId: string; onClose: () => void }) {
  const { api, me } = useSession()
  const today = useToday()
  const us = me.company.unitSystem === 'us'
  const typed = useSoftener()
  const add = useCommand(api.sites.addSoftener.mutationOptions(), { onDone: onClose })
  const submit = () => {
    const softener = typed.read()
    if (softener !== null) add.send({ siteId, softener })
  }
  return (
    <FormDialog
      title="Add a softener"
      lead="Leave blank what nobody knows."
      onClose={onClose}
      onSubmit={submit}
      busy={add.isPending}
      error={add.error}
    >
      <SoftenerFields softener={typed} today={today} dayOrder={us ? 'month-first' : 'day-first'} />
    </FormDialog>
  )
}
