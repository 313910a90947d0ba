import type { Metadata } from 'next'
import { SignIn } from '@/features/sign-in/sign-in'

export const metadata: Metadata = { title: 'Sign in' }

export default function SignInPage() {
  return <SignIn />
}
