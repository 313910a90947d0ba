import 'server-only'
import { readJobs, readJobsOverview } from '@almanac/database/read/job-list'
import { readJobChoices } from '@almanac/database/read/job-page'
import { memberNames } from '@almanac/identity/people'
import { bestPlaces } from '@almanac/operations/jobs/best-places'
import { bookVisit } from '@almanac/operations/jobs/book-visit'
import { callOffJob } from '@almanac/operations/jobs/call-off-job'
import { callOffVisit } from '@almanac/operations/jobs/call-off-visit'
import { changeJob } from '@almanac/operations/jobs/change-job'
import { holdJob } from '@almanac/operations/jobs/hold-job'
import { missVisit } from '@almanac/operations/jobs/miss-visit'
import { moveVisit } from '@almanac/operations/jobs/move-visit'
import { proposeJob } from '@almanac/operations/jobs/propose-job'
import { proposeJobs } from '@almanac/operations/jobs/propose-jobs'
import { proposePlanned } from '@almanac/operations/jobs/propose-planned'
import { resumeJob } from '@almanac/operations/jobs/resume-job'
import { sayUntil } from '@almanac/operations/jobs/say-until'
import { jobWithLength } from '@almanac/operations/jobs/visit-lengths'
import { can } from '../procedure.ts'

export const jobs = {
  list: can('read:job').jobs.list.handler(({ context, input }) => readJobs(context.scope, input)),
  overview: can('read:job').jobs.overview.handler(({ context }) => readJobsOverview(context.scope)),
  get: can('read:job').jobs.get.handler(async ({ context, input }) => {
    const names = await memberNames(context.scope.companyId)
    return jobWithLength(context.scope, input.jobId, (personId) => names.get(personId) ?? null)
  }),
  places: can('book:visit').jobs.places.handler(({ context, input }) => bestPlaces(context.scope, input)),
  choices: can('propose:job').jobs.choices.handler(({ context, input }) => readJobChoices(context.scope, input.siteId)),
  propose: can('propose:job').jobs.propose.handler(({ context, input }) => proposeJobs(context.scope, input)),
  proposePlanned: can('propose:job').jobs.proposePlanned.handler(({ context, input }) => proposePlanned(context.scope, input)),
  proposeOne: can('propose:job').jobs.proposeOne.handler(({ context, input }) => proposeJob(context.scope, input)),
  book: can('book:visit').jobs.book.handler(({ context, input }) => bookVisit(context.scope, input)),
  moveVisit: can('book:visit').jobs.moveVisit.handler(({ context, input }) => moveVisit(context.scope, input)),
  callOffVisit: can('book:visit').jobs.callOffVisit.handler(({ context, input }) => callOffVisit(context.scope, input)),
  missVisit: can('book:visit').jobs.missVisit.handler(({ context, input }) => missVisit(context.scope, input)),
  change: can('book:visit').jobs.change.handler(({ context, input }) => changeJob(context.scope, input)),
  sayUntil: can('book:visit').jobs.sayUntil.handler(({ context, input }) => sayUntil(context.scope, input)),
  hold: can('book:visit').jobs.hold.handler(({ context, input }) => holdJob(context.scope, input)),
  callOff: can('book:visit').jobs.callOff.handler(({ context, input }) => callOffJob(context.scope, input)),
  resume: can('book:visit').jobs.resume.handler(({ context, input }) => resumeJob(context.scope, input)),
}
