import type { createTranslator } from 'use-intl/core'
import type { Room } from './catalogue.ts'
import type { en } from './en/all.ts'

/**
 * Says the messages of one room in one language: `words('weArrive', { from, until })`. A key or a value that the English message does not have
 * does not compile. Numbers, days and amounts are given as they shall be read: written by the writers of units.
 */
export type Words<Name extends Room> = ReturnType<typeof createTranslator<typeof en, Name>>

/** The messages of a room. */
export type Key<Name extends Room> = keyof (typeof en)[Name]
