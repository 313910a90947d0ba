import type { Page } from '@playwright/test'

/** The one search field of every head. */
export const searchField = (page: Page) => page.getByRole('combobox', { name: 'Search' })

export const option = (page: Page, words: string) => page.getByRole('option').filter({ hasText: words }).first()

/** Asks the API as the signed-in person, past the screens. */
async function ask<T>(page: Page, path: string, json: unknown): Promise<T> {
  const answer = await page.request.post(`/api/rpc/${path}`, { data: { json }, headers: { 'x-csrf-token': 'orpc' } })
  return ((await answer.json()) as { json: T }).json
}

type Known = { siteId: string; label: string; customer: string; phone: string }

/** A customer of the demo with a telephone number. */
export async function someCustomer(page: Page): Promise<Known> {
  const { rows } = await ask<{ rows: { id: string }[] }>(page, 'sites/list', { limit: 30 })
  for (const { id } of rows.slice(10)) {
    type Site = { label: string; whom: { customerName: string | null; called: { phone: string } | null } }
    const { label, whom } = await ask<Site>(page, 'sites/page', { siteId: id })
    if (whom.customerName && whom.called) return { siteId: id, label, customer: whom.customerName, phone: whom.called.phone }
  }
  throw new Error('no site of the demo has a customer with a number')
}
