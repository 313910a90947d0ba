import type { Catalogue } from '../catalogue.ts'
import { arrival } from './arrival.ts'
import { field } from './field.ts'

/** Every message in Spanish. */
export const es: Catalogue = { ...field, arrival }
