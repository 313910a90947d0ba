'use client'
import type { ImportBatchPage } from '@almanac/contract/imports'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** The way out of a list that is not to be imported after all; asked once, for what was chosen for its columns goes with it. */
export function DiscardPart({ batch }: { batch: ImportBatchPage }) {
  const router = useRouter()
  const { api } = useSession()
  const [asking, setAsking] = useState(false)
  const discard = useCommand(api.imports.discard.mutationOptions(), { onDone: () => router.push('/imports') })
  return (
    <>
      <Button kind="quiet" onClick={() => setAsking(true)}>
        Discard this list
      </Button>
      <Dialog
        open={asking}
        onClose={() => setAsking(false)}
        title="Discard this list"
        actions={
          <>
            <Button onClick={() => setAsking(false)}>Cancel</Button>
            <Button
              kind="danger"
              busy={discard.isPending}
              busyLabel="Discarding"
              onClick={() => discard.send({ batchId: batch.id, version: batch.version })}
            >
              Discard it
            </Button>
          </>
        }
      >
        <p>
          Nothing of {batch.fileName} was imported. Its rows and your choices for its columns are deleted here; your own file stays as it
          is.
        </p>
        {discard.error ? <Problem happened={readFailure(discard.error).message} /> : null}
      </Dialog>
    </>
  )
}
