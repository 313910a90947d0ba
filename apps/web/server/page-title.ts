import 'server-only'
import type { Key } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { signedIn } from './signed-in.ts'

const locale = async () => (await signedIn()).company.locale

/** The title of a page as the menu calls it, in the language of whoever looks: for a page's `generateMetadata`. */
export const menuTitle = (page: Key<'page'>) => async (): Promise<Metadata> => ({ title: wordsIn(await locale(), 'page')(page) })

/** The title of a page that no menu leads to. */
export const ownTitle = (page: Key<'pageTitle'>) => async (): Promise<Metadata> => ({ title: wordsIn(await locale(), 'pageTitle')(page) })
