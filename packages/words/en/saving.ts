/** What a form says as it is saved, and where somebody else changed the same meanwhile. */
export const saving = {
  save: 'Save',
  saving: 'Saving',
  cancel: 'Cancel',
  edit: 'Edit',
  kept: 'What you typed is still in the form.',
  fact: 'Fact',
  theirs: 'Theirs',
  yours: 'Yours',
  same: 'Your values are the same as theirs, so nothing of yours is lost.',
  useTheirs: 'Use theirs',
  keepMine: 'Keep mine',
  nothing: 'nothing',
  yes: 'yes',
  no: 'no',
} as const
