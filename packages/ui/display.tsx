'use client'
import type { Display } from '@almanac/units/display'
import { createContext, useContext } from 'react'

const Shown = createContext<Display | null>(null)

/** Says once for a page how the company reads numbers, money, days and clocks. */
export const DisplayProvider = Shown.Provider

/** How the company of this page reads what is shown to it. Only under a `DisplayProvider`. */
export function useDisplay(): Display {
  const display = useContext(Shown)
  if (!display) throw new Error('useDisplay is used outside a DisplayProvider')
  return display
}
