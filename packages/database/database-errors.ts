import { AppError } from '@almanac/runtime/errors'

/** Constraints that a person can run into, with the sentence they read. */
const SENTENCES: Record<string, string> = {
  assignment_one_place: 'One of these people is already on another visit at that time. Nothing was booked; choose another time or crew.',
  vehicle_use_one_place: 'The vehicle is already out on another visit at that time. Nothing was booked; choose another time or vehicle.',
  visit_one_open: 'This job already has a visit that is still to come. Nothing was booked; look at the job again.',
  bed_one_open: 'This tank already has a bed in service. Nothing was changed; open the tank to see it.',
  tenure_one_open: 'This site already has a customer who holds it. Nothing was changed; end that first.',
  job_one_open_rebed: 'A rebed for this bed is already open. Nothing was added; open the bed to see the job.',
  colleague_company_id_person_id_key:
    'Someone else on the day sheets signs in as this person already. Nothing was saved; change that one first, or choose another.',
  supply_period_one_start: 'This supply already has an entry that starts on that day. Nothing was added; change that one instead.',
}

type Raw = { code?: string; message?: string; meta?: unknown; cause?: unknown }

/** The SQLSTATE and text of a PostgreSQL error, wherever Prisma put it. */
function postgresError(error: Raw): { state: string; text: string } {
  const text = `${error.message ?? ''} ${JSON.stringify(error.meta ?? {})} ${JSON.stringify(error.cause ?? {})}`
  return { state: /\b(23P01|23505|23503|23514|42501|40001|40P01|55P03|57014)\b/.exec(text)?.[1] ?? '', text }
}

/** Maps what the database refuses to an error a person can act on; passes others on as they are. */
export function asAppError(error: unknown): unknown {
  if (error instanceof AppError || !(error instanceof Error)) return error
  const raw = error as Raw
  const { state, text } = postgresError(raw)
  const constraint = Object.keys(SENTENCES).find((name) => text.includes(name))
  if (constraint) return new AppError('conflict', SENTENCES[constraint] ?? '', { constraint }, error)
  if (state === '23505' || raw.code === 'P2002')
    return new AppError('conflict', 'Such an entry exists already. Nothing was added; change that one instead.', {}, error)
  if (state === '23503' || raw.code === 'P2003')
    return new AppError(
      'not-found',
      'A record this refers to does not exist in this company. Nothing was changed; load the page again.',
      {},
      error,
    )
  if (state === '40001' || state === '40P01' || state === '55P03' || raw.code === 'P2034')
    return new AppError(
      'conflict',
      'Someone else changed the same thing at that moment. Nothing was saved; look again and retry.',
      { busy: true },
      error,
    )
  if (raw.code === 'P2028' || raw.code === 'P1001' || raw.code === 'P2024')
    return new AppError('unavailable', 'The database did not answer in time. Nothing was saved; try again in a moment.', {}, error)
  return error
}
