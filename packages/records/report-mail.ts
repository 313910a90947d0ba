/** Why a service report can't be mailed to somebody: nothing mails here, or they have no address, one that mail came back from, or don't agree; or it went already. */
export const reportRefusals = ['no-mail', 'no-address', 'came-back', 'no-consent', 'sent'] as const
export type ReportRefusal = (typeof reportRefusals)[number]
