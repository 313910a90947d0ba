'use client'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { emptySoftener, SoftenerFields, softenerOf } from '@/client/softener-fields'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useToday } from '@/client/use-today'

/** A further softener at the site. */
export function AddSoftener({ siteId, onClose }: { siteId: string; onClose: () => void }) {
  const { api, me } = useSession()
  const today = useToday()
  const us = me.company.unitSystem === 'us'
  const form = useFields(() => emptySoftener(us ? 'ft3' : 'L'))
  const [volumeError, setVolumeError] = useState<string>()
  const add = useCommand(api.sites.addSoftener.mutationOptions(), { onDone: onClose })
  const submit = () => {
    const read = softenerOf(form.values)
    setVolumeError(read.volumeError)
    if (read.volumeError === undefined) add.send({ siteId, softener: read.softener })
  }
  return (
    <FormDialog
      title="Add a softener"
      lead="Leave empty what nobody knows."
      onClose={onClose}
      onSubmit={submit}
      busy={add.isPending}
      error={add.error}
    >
      <SoftenerFields form={form} volumeError={volumeError} today={today} dayOrder={us ? 'month-first' : 'day-first'} />
    </FormDialog>
  )
}
