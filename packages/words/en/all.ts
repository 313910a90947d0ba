import { arrival } from './arrival.ts'
import { field } from './field.ts'

/** Every message in English: the shape that the other languages follow. */
export const en = { ...field, arrival }
