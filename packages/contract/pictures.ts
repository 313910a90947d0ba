import { jobKinds } from '@almanac/records/job-kind'
import { photographKinds, visitPictureKinds } from '@almanac/records/picture-kind'
import { signings, unsigned } from '@almanac/records/signing'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { visitStates } from '@almanac/records/visit-state'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Id, Instant } from './shared.ts'

/** The largest picture that is taken, bytes as sent. */
const MOST_PICTURE_BYTES = 8 * 1024 * 1024

/**
 * A picture that will be sent: what it shows, how large it is and its sum (SHA-256, hex), so that the server knows when it has all of it and that it is the same. The
 * command's id becomes the picture's; its bytes follow under that id. `signedBy` is who signed, of a signature alone.
 */
export const BeginPicture = command({
  visitId: Id,
  kind: z.enum(visitPictureKinds),
  takenAt: Instant,
  bytes: z.number().int().min(1).max(MOST_PICTURE_BYTES),
  sha256: z.string().regex(/^[0-9a-f]{64}$/, 'must be a SHA-256 sum in hex'),
  signedBy: z.string().trim().min(1).max(120).optional(),
})
export type BeginPicture = z.infer<typeof BeginPicture>

/** Nobody signed, and why not. */
export const NoteUnsigned = command({ visitId: Id, answer: z.enum(unsigned), at: Instant })
export type NoteUnsigned = z.infer<typeof NoteUnsigned>

/** What a visit has to show for itself. */
export const VisitProof = z.object({
  visitId: Id,
  jobId: Id,
  day: Day,
  kind: z.enum(jobKinds),
  state: z.enum(visitStates),
  outcome: z.enum(visitOutcomes).nullable(),
  photographs: z.array(z.object({ id: Id, kind: z.enum(photographKinds), takenAt: Instant, width: z.number(), height: z.number() })),
  /** Pictures that a tablet has begun to send and that are not here yet. */
  coming: z.number().int(),
  signature: z.object({ answer: z.enum(signings), name: z.string().nullable(), at: Instant, pictureId: Id.nullable() }).nullable(),
})
export type VisitProof = z.infer<typeof VisitProof>

export const pictures = {
  begin: oc
    .route({ method: 'POST', path: '/pictures/begin' })
    .input(BeginPicture)
    .output(z.object({ pictureId: Id })),
  noteUnsigned: oc
    .route({ method: 'POST', path: '/pictures/note-unsigned' })
    .input(NoteUnsigned)
    .output(z.object({ visitId: Id })),
  ofJob: oc
    .route({ method: 'GET', path: '/pictures/of-job' })
    .input(z.object({ jobId: Id }))
    .output(z.array(VisitProof)),
  ofBed: oc
    .route({ method: 'GET', path: '/pictures/of-bed' })
    .input(z.object({ bedId: Id }))
    .output(z.array(VisitProof)),
}
