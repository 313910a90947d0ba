import 'server-only'
import { readDrivePaceRow } from '@almanac/database/read/drive-pace'
import { readFigureHistory, readFirmFigures } from '@almanac/database/read/firm-figures'
import { readSettings } from '@almanac/database/read/firm-settings'
import { readLetterhead } from '@almanac/database/read/letterhead'
import { memberNames } from '@almanac/identity/people'
import { changeFigure } from '@almanac/operations/firm/change-figure'
import { changeLogo } from '@almanac/operations/firm/change-logo'
import { changeSettings } from '@almanac/operations/firm/change-settings'
import { resetFigure } from '@almanac/operations/firm/reset-figure'
import { takeDrivePace } from '@almanac/operations/firm/take-drive-pace'
import { learnPace } from '@almanac/operations/jobs/travel-desk'
import { holidayAreas, holidaysKept } from '@almanac/operations/shared/public-holidays'
import { headLines } from '@almanac/records/letterhead'
import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { can } from '../procedure.ts'

const manage = can('manage:company').firm

export const firm = {
  figures: can('read:site').firm.figures.handler(async ({ context }) => ({ rows: await readFirmFigures(context.scope) })),
  changeFigure: manage.changeFigure.handler(({ context, input }) => changeFigure(context.scope, input)),
  resetFigure: manage.resetFigure.handler(({ context, input }) => resetFigure(context.scope, input)),
  drives: manage.drives.handler(async ({ context: { scope, who } }) => {
    const [row, { pace, ...recorded }] = await Promise.all([readDrivePaceRow(scope), learnPace(scope, who.company.timeZone)])
    return { version: row?.version ?? 0, inUse: row?.pace ?? null, found: pace, recorded }
  }),
  takeDrives: manage.takeDrives.handler(({ context, input }) => takeDrivePace(context.scope, input)),
  settings: manage.settings.handler(({ context }) => readSettings(context.scope)),
  holidays: manage.holidays.handler(({ context, input }) => {
    const today = dayIn(context.who.company.timeZone, now())
    return { areas: [...holidayAreas()], holidays: holidaysKept({ holidayArea: input.area ?? null, holidaysWorked: [] }, today) }
  }),
  changeSettings: manage.changeSettings.handler(({ context, input }) => changeSettings(context.scope, input)),
  changeLogo: manage.changeLogo.handler(({ context, input }) => changeLogo(context.scope, input)),
  letterhead: can('read:job').firm.letterhead.handler(async ({ context }) => {
    const head = await readLetterhead(context.scope)
    return { firmName: head.firmName, lines: headLines(head), logo: head.logo !== null }
  }),
  history: manage.history.handler(async ({ context, input }) => {
    const names = await memberNames(context.scope.companyId)
    return readFigureHistory(context.scope, input, (personId) => names.get(personId) ?? null)
  }),
}
