import { redirect } from 'next/navigation'
import { signedIn } from '@/server/signed-in'

export const dynamic = 'force-dynamic'

/** Home depends on the role: what comes due, the day sheets, or today's work. */
export default async function Home() {
  const { role } = await signedIn()
  redirect(role === 'owner' ? '/coming-due' : role === 'dispatcher' ? '/day-sheets' : '/today')
}
