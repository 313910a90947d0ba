/** Photographs, signatures and reports of visits. */
export const proof = {
  title: 'Photographs and reports',
  loading: 'Loading photographs',
  none: 'Photographs and the service report appear here after a visit.',
  report: 'Service report (PDF)',
  coming: '{count, plural, one {1 picture is} other {# pictures are}} still on {count, plural, one {its} other {their}} way from a tablet.',
  signature: 'Signature',
  signatureOf: 'Signature of {name}',
  signed: 'Signed',
} as const
