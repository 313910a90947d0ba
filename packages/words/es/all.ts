import type { Catalogue } from '../catalogue.ts'
import { arrival } from './arrival.ts'
import { field } from './field.ts'
import { join } from './join.ts'
import { letter } from './letter.ts'
import { plan } from './plan.ts'
import { refusal } from './refusal.ts'
import { signIn } from './sign-in.ts'

/** Every message in Spanish. */
export const es: Catalogue = { ...field, arrival, join, letter, plan, refusal, signIn }
