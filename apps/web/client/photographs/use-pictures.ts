'use client'
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import { useCallback, useEffect, useState } from 'react'
import { v7 } from 'uuid'
import { useField } from '../field/field-home.tsx'
import { dropPicture, type KeptPicture, onPictures, picturesOf, putPicture, type Taken } from './picture-store.ts'

/** The sum that the office holds what comes against. The platform's own is there by https alone. */
export const sumOf = (bytes: ArrayBuffer): string => bytesToHex(sha256(new Uint8Array(bytes)))

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
