'use client'
import { backoffMs } from '@almanac/service-rules/field/outbox'
import { Notice } from '@almanac/ui/notice'
import { useWords } from '@almanac/words/use-words'
import { useEffect } from 'react'
import { useField } from '../field/field-home.tsx'
import { useSession } from '../providers.tsx'
import { dropOldPictures, onPictures } from './picture-store.ts'
import { sendPictures } from './send-pictures.ts'
import { usePictures } from './use-pictures.ts'

const WAKING = ['online', 'focus', 'pageshow'] as const

/** Sends the person's photographs and signatures when the server can be reached, and says how many wait. */
export function PicturesNote() {
  const { api } = useSession()
  const { owner } = useField()
  const { rows } = usePictures()
  const words = useWords('photographs')
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    let tries = 0
    let busy = false
    const send = async () => {
      if (busy) return
      clearTimeout(timer)
      busy = true
      try {
        await sendPictures(owner, api)
        tries = 0
      } catch {
        timer = setTimeout(() => void send(), backoffMs(++tries))
      } finally {
        busy = false
      }
    }
    const wake = () => void send()
    void dropOldPictures().catch(() => {})
    wake()
    const stop = onPictures(wake)
    for (const name of WAKING) window.addEventListener(name, wake)
    return () => {
      stop()
      for (const name of WAKING) window.removeEventListener(name, wake)
      clearTimeout(timer)
    }
  }, [api, owner])
  const waiting = rows?.filter((one) => !one.sent && one.refused === null).length ?? 0
  return waiting > 0 ? <Notice>{words('waiting', { count: waiting })}</Notice> : null
}
