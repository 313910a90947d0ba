import type { PublicCatalogue } from '../catalogue.ts'
import { common } from './common.ts'
import { join } from './join.ts'
import { signIn } from './sign-in.ts'

/** The rooms that the pages before signing in speak from. */
export const publicPages: PublicCatalogue = { common, join, signIn }
