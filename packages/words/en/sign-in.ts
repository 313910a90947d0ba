/** The way in. */
export const signIn = {
  title: 'Sign in',
  lead: 'Every softener your company looks after, what its water does to it, and when its bed will fail.',
  email: 'Email',
  password: 'Password',
  signIn: 'Sign in',
  signingIn: 'Signing in',
  code: 'Code',
  codeHint: 'The six digits of your authenticator app, or one of your spare codes',
  codeLead: 'One more step: your code.',
  wrongCode: 'This code is not right, or is no longer valid.',
  forgotten: 'Forgot your password?',
  wrong: 'Wrong email or password.',
  otherAddress: 'This page was opened under another address than the one the server answers to.',
  notNow: 'The server could not sign you in just now.',
  unreachable: 'Can’t reach the server.',
  kept: 'Your email is still in the form: check both and try again.',
} as const
