import 'server-only'
import { session } from './procedures/session.ts'

/** Every procedure, by domain, in the shape of the contract. */
export const router = {
  session,
}
