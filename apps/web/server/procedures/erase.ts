import 'server-only'
import { beforeForgetting, forgetPerson } from '@almanac/identity/forget-person'
import { eraseColleague, partFromSignIn, previewEraseColleague, signInOfColleague } from '@almanac/operations/keeping/erase-colleague'
import { eraseContact, previewEraseContact } from '@almanac/operations/keeping/erase-contact'
import { eraseCustomer, previewEraseCustomer } from '@almanac/operations/keeping/erase-customer'
import { removeOldExports } from '@almanac/operations/keeping/remove-exports'
import { can } from '../procedure.ts'

const manage = can('manage:company').erase

export const erase = {
  previewCustomer: manage.previewCustomer.handler(({ context, input }) => previewEraseCustomer(context.scope, input)),
  previewContact: manage.previewContact.handler(({ context, input }) => previewEraseContact(context.scope, input)),
  previewColleague: manage.previewColleague.handler(async ({ context: { scope, who }, input }) => {
    const personId = await signInOfColleague(scope, input.colleagueId)
    return previewEraseColleague(scope, input, personId ? await beforeForgetting(who, personId) : null)
  }),
  customer: manage.customer.handler(async ({ context: { scope }, input }) => {
    const erased = await eraseCustomer(scope, input)
    await removeOldExports(scope.companyId)
    return erased
  }),
  contact: manage.contact.handler(async ({ context: { scope }, input }) => {
    const erased = await eraseContact(scope, input)
    await removeOldExports(scope.companyId)
    return erased
  }),
  colleague: manage.colleague.handler(async ({ context: { scope, who }, input }) => {
    const personId = await signInOfColleague(scope, input.colleagueId)
    const erased = await eraseColleague(scope, input, personId ? await beforeForgetting(who, personId) : null)
    if (personId) await forgetPerson(who, personId)
    await partFromSignIn(scope, input.colleagueId)
    await removeOldExports(scope.companyId)
    return erased
  }),
}
