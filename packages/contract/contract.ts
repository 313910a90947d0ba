import { agreements } from './agreements.ts'
import { archive } from './archive.ts'
import { audit } from './audit.ts'
import { bedChoice } from './bed-choice.ts'
import { beds } from './beds.ts'
import { calls } from './calls.ts'
import { closing } from './closing.ts'
import { crews } from './crews.ts'
import { daySheets } from './day-sheets.ts'
import { due } from './due.ts'
import { erase } from './erase.ts'
import { exports } from './exports.ts'
import { field } from './field.ts'
import { find } from './find.ts'
import { firm } from './firm.ts'
import { forecasts } from './forecasts.ts'
import { guides } from './guides.ts'
import { imports } from './imports.ts'
import { jobs } from './jobs.ts'
import { materials } from './materials.ts'
import { merging } from './merging.ts'
import { people } from './people.ts'
import { pictures } from './pictures.ts'
import { plans } from './plans.ts'
import { reminders } from './reminders.ts'
import { reports } from './reports.ts'
import { session } from './session.ts'
import { sites } from './sites.ts'
import { softeners } from './softeners.ts'
import { stores } from './stores.ts'
import { visits } from './visits.ts'
import { water } from './water.ts'
import { week } from './week.ts'
import { windows } from './windows.ts'

/** Every request and answer of the API, by domain. The one description that server, client and the OpenAPI document share. */
export const contract = {
  agreements,
  archive,
  audit,
  bedChoice,
  beds,
  calls,
  closing,
  crews,
  daySheets,
  due,
  erase,
  exports,
  field,
  find,
  firm,
  forecasts,
  guides,
  imports,
  jobs,
  materials,
  merging,
  people,
  pictures,
  plans,
  reminders,
  reports,
  session,
  sites,
  softeners,
  stores,
  visits,
  water,
  week,
  windows,
}
