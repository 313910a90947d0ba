import 'server-only'
import { readBedProof, readJobProof } from '@almanac/database/read/visit-proof'
import { beginPicture } from '@almanac/operations/pictures/begin-picture'
import { noteUnsigned } from '@almanac/operations/pictures/note-unsigned'
import { can } from '../procedure.ts'

const read = can('read:job').pictures
const take = can('close:visit').pictures

export const pictures = {
  begin: take.begin.handler(({ context, input }) => beginPicture(context.scope, input)),
  noteUnsigned: take.noteUnsigned.handler(({ context, input }) => noteUnsigned(context.scope, input)),
  ofJob: read.ofJob.handler(({ context, input }) => readJobProof(context.scope, input.jobId)),
  ofBed: read.ofBed.handler(({ context, input }) => readBedProof(context.scope, input.bedId)),
}
