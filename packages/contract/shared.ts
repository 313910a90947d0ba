import * as z from 'zod'

/** An id: UUID. */
export const Id = z.uuid()

/** Years of four digits, with room to work forward and back from them: the day after 9999-12-31 has no such year, and JavaScript takes a year 99 for 1999. */
const hasYear = (text: string) => text.slice(0, 4) >= '1000' && text.slice(0, 4) <= '9899'
const NO_SUCH_YEAR = 'must be of a year from 1000 to 9899'

/** A time on the clock of the company's zone, 'HH:MM'. */
export const ClockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time such as 08:05')

/** A calendar day 'YYYY-MM-DD' in the company's zone. */
export const Day = z.iso.date().refine(hasYear, NO_SUCH_YEAR)

/** A month 'YYYY-MM'. */
export const Month = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])$/, 'must be a month such as 2027-03')
  .refine(hasYear, NO_SUCH_YEAR)

/** An instant, ISO 8601 in UTC. */
export const Instant = z.iso.datetime().refine(hasYear, NO_SUCH_YEAR)

/** The largest whole number that the database keeps in a column. */
const LARGEST_WHOLE = 2_147_483_647

/** The version of a row as the screen saw it. */
export const Version = z.number().int().min(1).max(LARGEST_WHOLE)

/** The version of a row as the screen saw it; 0 where there was no row yet. */
export const SeenVersion = z.number().int().min(0).max(LARGEST_WHOLE)

/** What each command carries: an id made by the screen, so that sending twice applies once. */
export const command = <S extends z.ZodRawShape>(shape: S) => z.object({ commandId: Id, ...shape })

/** What each list takes: how many, and the cursor of the page before. */
export const page = <S extends z.ZodRawShape>(shape: S) =>
  z.object({ ...shape, limit: z.number().int().min(1).max(200).default(50), cursor: z.string().max(500).optional() })

/** What each list answers. `nextCursor` is null on the last page. */
export const pageOf = <T extends z.ZodType>(row: T) => z.object({ rows: z.array(row), nextCursor: z.string().nullable() })

/** Why an unusual amount is right all the same, in a person's words. */
const Reason = z.string().trim().min(3).max(200)

/** The reasons of unusual amounts that a person insists on, by the name of the amount; without one an unusual amount is refused. */
export const Why = z.record(z.string().max(40), Reason).optional()

/** A number as typed with its unit, kept beside the canonical value, and why it is right where it is unusual. */
export const Entered = z.object({ value: z.number(), unit: z.string().max(20), why: Reason.optional() })

/** What a failed request carries as `data`. */
export const Failure = z.object({
  code: z.string(),
  retryable: z.boolean(),
  requestId: z.string(),
  detail: z.record(z.string(), z.unknown()),
})
export type Failure = z.infer<typeof Failure>
