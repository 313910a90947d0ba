import type { en } from './en/all.ts'
import type { field } from './en/field.ts'
import type { publicPages } from './en/public.ts'
import type { Translation } from './translation.ts'

/** A room of the house's words: what one screen, paper or record says. */
export type Room = keyof typeof en
export type FieldRoom = keyof typeof field

/** All messages in one language. */
export type Catalogue = { readonly [Name in Room]: Translation<(typeof en)[Name]> }

/** Those of the tablet's pages. */
export type FieldCatalogue = Pick<Catalogue, FieldRoom>

/** Those of the pages before signing in. */
export type PublicCatalogue = Pick<Catalogue, keyof typeof publicPages>
