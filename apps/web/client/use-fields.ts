'use client'
import { useState } from 'react'

type Changed = { target: { value: string } }

/** Texts of a form, by name. `field('town')` is what a text control takes; what was typed stays as typed until it is sent. */
export function useFields<T extends Record<string, string>>(start: () => T) {
  const [values, setValues] = useState<T>(start)
  const set = (part: Partial<T>) => setValues((now) => ({ ...now, ...part }))
  const field = (name: keyof T) => ({
    value: values[name],
    onChange: (event: Changed) => setValues((now) => ({ ...now, [name]: event.target.value })),
  })
  return { values, set, field }
}
