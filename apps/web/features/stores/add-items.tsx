'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useToast } from '@almanac/ui/toast'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { ItemForm } from './item-form.tsx'

/** Adds to the stores' list: one item, or while there are `none` what a rebed usually takes. */
export function AddItems({ none }: { none: boolean }) {
  const { api } = useSession()
  const [open, setOpen] = useState(false)
  const showToast = useToast()
  const usual = useCommand(api.stores.addUsualItems.mutationOptions(), {
    onDone: ({ added }) => showToast({ text: `${added} items added. Count what is on the shelf.` }),
  })
  return (
    <div className="mb-3 flex flex-wrap gap-2 print:hidden">
      <Button onClick={() => setOpen(true)}>Add an item</Button>
      {none ? (
        <Button kind="ink" busy={usual.isPending} onClick={() => usual.send({})}>
          Start with what a rebed usually takes
        </Button>
      ) : null}
      {usual.error ? <Problem happened={readFailure(usual.error).message} /> : null}
      {open ? <ItemForm item={null} onClose={() => setOpen(false)} /> : null}
    </div>
  )
}
