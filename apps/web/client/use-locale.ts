'use client'
import { useSession } from './providers.tsx'

/** The company's locale (BCP 47): whether "1,200" is twelve hundred. */
export const useLocale = (): string => useSession().me.company.locale
