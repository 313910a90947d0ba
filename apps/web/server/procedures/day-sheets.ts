import 'server-only'
import { changeDaySheet } from '@almanac/operations/jobs/change-day-sheet'
import { copyDaySheets } from '@almanac/operations/jobs/copy-day-sheets'
import { crewChoices } from '@almanac/operations/jobs/crew-choices'
import { fitsWithDrives } from '@almanac/operations/jobs/fits-with-drives'
import { openDaySheet } from '@almanac/operations/jobs/open-day-sheet'
import { sheetsOfDay } from '@almanac/operations/jobs/sheets-of-day'
import { can } from '../procedure.ts'

export const daySheets = {
  day: can('book:visit').daySheets.day.handler(({ context, input }) => sheetsOfDay(context.scope, input.day)),
  fits: can('book:visit').daySheets.fits.handler(({ context, input }) => fitsWithDrives(context.scope, input.crewDayId)),
  crewChoices: can('book:visit').daySheets.crewChoices.handler(({ context, input }) => crewChoices(context.scope, input.day)),
  open: can('book:visit').daySheets.open.handler(({ context, input }) => openDaySheet(context.scope, input)),
  copy: can('book:visit').daySheets.copy.handler(({ context, input }) => copyDaySheets(context.scope, input)),
  change: can('book:visit').daySheets.change.handler(({ context, input }) => changeDaySheet(context.scope, input)),
}
