import { databaseAnswers } from '@almanac/database/ready'

export const dynamic = 'force-dynamic'

/** Ready: the database answers both logins. */
export async function GET() {
  const ready = await databaseAnswers()
  return Response.json({ ready }, { status: ready ? 200 : 503 })
}
