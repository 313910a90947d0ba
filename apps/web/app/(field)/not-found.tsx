import { NothingHere } from '@/server/nothing-here'
import { meOf } from '@/server/procedures/session'
import { signedIn } from '@/server/signed-in'

/** Of a record that the company has not, inside the frame that leads on. */
export default async function NotFound() {
  return <NothingHere locale={(await meOf(await signedIn())).company.locale} />
}
