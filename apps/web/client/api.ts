'use client'
import type { contract } from '@almanac/contract/contract'
import { createORPCClient } from '@orpc/client'
import { RPCLink } from '@orpc/client/fetch'
import { SimpleCsrfProtectionLinkPlugin } from '@orpc/client/plugins'
import type { ContractRouterClient } from '@orpc/contract'
import { createTanstackQueryUtils } from '@orpc/tanstack-query'
import { pageHeaders } from './page-company.ts'

export type Client = ContractRouterClient<typeof contract>

/** The typed client of the API. */
const client: Client = createORPCClient(
  new RPCLink({ headers: pageHeaders, url: () => `${location.origin}/api/rpc`, plugins: [new SimpleCsrfProtectionLinkPlugin()] }),
)

/** Query and mutation options; keys begin with the company, so that nothing of one firm is shown under another. */
export const apiFor = (companyId: string) => createTanstackQueryUtils(client, { path: [companyId] })
export type Api = ReturnType<typeof apiFor>
