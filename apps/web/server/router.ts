import 'server-only'
import { agreements } from './procedures/agreements.ts'
import { archive } from './procedures/archive.ts'
import { audit } from './procedures/audit.ts'
import { bedChoice } from './procedures/bed-choice.ts'
import { beds } from './procedures/beds.ts'
import { calls } from './procedures/calls.ts'
import { closing } from './procedures/closing.ts'
import { crews } from './procedures/crews.ts'
import { daySheets } from './procedures/day-sheets.ts'
import { due } from './procedures/due.ts'
import { erase } from './procedures/erase.ts'
import { exports } from './procedures/exports.ts'
import { field } from './procedures/field.ts'
import { find } from './procedures/find.ts'
import { firm } from './procedures/firm.ts'
import { forecasts } from './procedures/forecasts.ts'
import { guides } from './procedures/guides.ts'
import { imports } from './procedures/imports.ts'
import { jobs } from './procedures/jobs.ts'
import { materials } from './procedures/materials.ts'
import { merging } from './procedures/merging.ts'
import { people } from './procedures/people.ts'
import { pictures } from './procedures/pictures.ts'
import { plans } from './procedures/plans.ts'
import { reminders } from './procedures/reminders.ts'
import { reports } from './procedures/reports.ts'
import { session } from './procedures/session.ts'
import { sites } from './procedures/sites.ts'
import { softeners } from './procedures/softeners.ts'
import { stores } from './procedures/stores.ts'
import { visits } from './procedures/visits.ts'
import { water } from './procedures/water.ts'
import { week } from './procedures/week.ts'
import { windows } from './procedures/windows.ts'

/** Every procedure, by domain, in the shape of the contract. */
export const router = {
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
