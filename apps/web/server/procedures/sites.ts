import { dayIn } from '@almanac/units/calendar/zone-clock'
import 'server-only'
import { readCustomerChoices, readSupplyChoices } from '@almanac/database/read/site-choices'
import { readSiteHistory } from '@almanac/database/read/site-history'
import { readSiteNearby } from '@almanac/database/read/site-nearby'
import { readSitePage } from '@almanac/database/read/site-page'
import { readSites } from '@almanac/database/read/sites-list'
import { addContact } from '@almanac/operations/customers/add-contact'
import { addSite } from '@almanac/operations/customers/add-site'
import { archiveContact } from '@almanac/operations/customers/archive-contact'
import { changeContact } from '@almanac/operations/customers/change-contact'
import { changeCustomer } from '@almanac/operations/customers/change-customer'
import { changeHolder } from '@almanac/operations/customers/change-holder'
import { changeSite } from '@almanac/operations/customers/change-site'
import { setConsent } from '@almanac/operations/customers/set-consent'
import { addPreTreatment } from '@almanac/operations/softeners/add-pre-treatment'
import { addSoftener } from '@almanac/operations/softeners/add-softener'
import { changeSoftener } from '@almanac/operations/softeners/change-softener'
import { endPreTreatment } from '@almanac/operations/softeners/end-pre-treatment'
import { queryTerms } from '@almanac/service-rules/search/search-tokens'
import { can } from '../procedure.ts'

export const sites = {
  list: can('read:site').sites.list.handler(({ context, input }) =>
    readSites(context.scope, { terms: queryTerms(input.q ?? ''), limit: input.limit, cursor: input.cursor }),
  ),
  page: can('read:site').sites.page.handler(({ context, input }) => readSitePage(context.scope, input.siteId)),
  history: can('read:site').sites.history.handler(({ context, input }) =>
    readSiteHistory(context.scope, input.siteId, (instant) => dayIn(context.who.company.timeZone, instant)),
  ),
  nearby: can('read:site').sites.nearby.handler(({ context, input }) => readSiteNearby(context.scope, input.siteId)),
  supplies: can('read:site').sites.supplies.handler(({ context }) => readSupplyChoices(context.scope)),
  customers: can('change:site').sites.customers.handler(({ context, input }) => readCustomerChoices(context.scope, input.q)),
  add: can('change:site').sites.add.handler(({ context, input }) => addSite(context.scope, input)),
  change: can('change:site').sites.change.handler(({ context, input }) => changeSite(context.scope, input)),
  changeCustomer: can('change:site').sites.changeCustomer.handler(({ context, input }) => changeCustomer(context.scope, input)),
  changeHolder: can('change:site').sites.changeHolder.handler(({ context, input }) => changeHolder(context.scope, input)),
  addContact: can('change:site').sites.addContact.handler(({ context, input }) => addContact(context.scope, input)),
  changeContact: can('change:site').sites.changeContact.handler(({ context, input }) => changeContact(context.scope, input)),
  archiveContact: can('change:site').sites.archiveContact.handler(({ context, input }) => archiveContact(context.scope, input)),
  setConsent: can('change:site').sites.setConsent.handler(({ context, input }) => setConsent(context.scope, input)),
  addSoftener: can('change:site').sites.addSoftener.handler(({ context, input }) => addSoftener(context.scope, input)),
  changeSoftener: can('change:site').sites.changeSoftener.handler(({ context, input }) => changeSoftener(context.scope, input)),
  addPreTreatment: can('change:site').sites.addPreTreatment.handler(({ context, input }) => addPreTreatment(context.scope, input)),
  endPreTreatment: can('change:site').sites.endPreTreatment.handler(({ context, input }) => endPreTreatment(context.scope, input)),
}
