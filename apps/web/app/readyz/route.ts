import { databaseAnswers } from '@almanac/database/ready'
import { liveChanges } from '@/server/live-changes'

export const dynamic = 'force-dynamic'

/** Ready: the database answers both logins. `live` says whether changes arrive, without which pages still work but do not change by themselves. */
export async function GET() {
  const ready = await databaseAnswers()
  const live = liveChanges()
  if (ready) void live.start().catch(() => undefined) // tells its hearing before the first page is open
  const headers: Record<string, string> = ready ? {} : { 'retry-after': '5' }
  return Response.json({ ready, live: live.hearing }, { status: ready ? 200 : 503, headers })
}
