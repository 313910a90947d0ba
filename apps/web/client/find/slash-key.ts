import { useEffect, useSyncExternalStore } from 'react'

/** Where this browser keeps that "/" is just a sign: whoever steers by voice types signs without meaning them (WCAG 2.1.4). */
const KEPT = 'almanac-slash-key'
const CHANGED = 'almanac-slash-key-changed'

const isOn = () => {
  try {
    return localStorage.getItem(KEPT) !== 'off'
  } catch {
    return true // a browser that keeps nothing has the usual
  }
}

function listen(changed: () => void) {
  window.addEventListener(CHANGED, changed)
  return () => window.removeEventListener(CHANGED, changed)
}

/** Whether "/" leads to the search in this browser, and how to change it. */
export function useSlashKey(): { on: boolean; set: (on: boolean) => void } {
  const on = useSyncExternalStore(listen, isOn, () => true)
  const set = (next: boolean) => {
    try {
      localStorage.setItem(KEPT, next ? 'on' : 'off')
    } catch {
      // kept nowhere, so it stays as it is
    }
    window.dispatchEvent(new Event(CHANGED))
  }
  return { on, set }
}

const typesText = (target: EventTarget | null) =>
  target instanceof HTMLElement && (target.isContentEditable || target.matches('input, textarea, select'))

/** Calls `act` when one key is pressed anywhere but in a field or a dialog, where single keys are on in this browser. */
export function useOnKey(key: string, act: () => void): void {
  const { on } = useSlashKey()
  useEffect(() => {
    if (!on) return
    const press = (event: KeyboardEvent) => {
      if (event.key !== key || event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return
      if (typesText(event.target) || document.querySelector('dialog[open]')) return
      event.preventDefault()
      act()
    }
    document.addEventListener('keydown', press)
    return () => document.removeEventListener('keydown', press)
  })
}

/** Calls `act` when "/" is pressed anywhere but in a field or a dialog. */
export const useOnSlash = (act: () => void): void => useOnKey('/', act)
