import type { Metadata } from 'next'
import { AskNext } from '@/features/ask-next/ask-next'

export const metadata: Metadata = { title: 'Ask at the next call' }

export default function AskNextPage() {
  return <AskNext />
}
