'use client'
import { useCallback, useEffect, useState } from 'react'
import { v7 } from 'uuid'
import { useField } from '../field/field-home.tsx'
import { dropPicture, type KeptPicture, onPictures, picturesOf, putPicture, type Taken } from './picture-store.ts'

/** What this device keeps of the person's pictures; null until it was read. `add` throws where the device keeps nothing. */
export function usePictures() {
  const { owner } = useField()
  const [rows, setRows] = useState<KeptPicture[] | null>(null)
  useEffect(() => {
    let here = true
    const read = () =>
      void picturesOf(owner).then(
        (all) => here && setRows(all),
        () => here && setRows([]),
      )
    read()
    const stop = onPictures(read)
    return () => {
      here = false
      stop()
    }
  }, [owner])
  const add = useCallback(
    (visitId: string, taken: Taken) =>
      putPicture({ owner, id: v7(), visitId, at: new Date().toISOString(), taken, sent: false, refused: null }),
    [owner],
  )
  const drop = useCallback((id: string) => dropPicture(owner, id), [owner])
  return { rows, add, drop }
}
