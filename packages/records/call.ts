/** What a caller sees at their tap or softener, in the trade's own words; common practice, no source. */
export const callComplaints = [
  'hard-water',
  'no-water',
  'leak',
  'low-pressure',
  'beads',
  'salty',
  'discolored',
  'runs-on',
  'no-salt-used',
  'question',
] as const
export type CallComplaint = (typeof callComplaints)[number]

export const callComplaintWords: Readonly<Record<CallComplaint, string>> = {
  'hard-water': 'Hard water',
  'no-water': 'No water',
  leak: 'Leak',
  'low-pressure': 'Low pressure',
  beads: 'Beads in the tap',
  salty: 'Salty taste',
  discolored: 'Brown water',
  'runs-on': 'Runs all the time',
  'no-salt-used': 'Uses no salt',
  question: 'A question',
}

/** What follows from a call. */
export const callFollowUps = ['nothing', 'visit', 'materials', 'quote', 'call-back'] as const
export type CallFollowUp = (typeof callFollowUps)[number]

export const callFollowUpWords: Readonly<Record<CallFollowUp, string>> = {
  nothing: 'Nothing more',
  visit: 'Visit',
  materials: 'Materials',
  quote: 'Quote later',
  'call-back': 'Call back',
}

/** Visits that a call may ask for; what is only delivered goes by `materials`. */
export const calledForVisits = ['repair', 'emergency', 'rebed', 'look-and-quote', 'complaint'] as const
export type CalledForVisit = (typeof calledForVisits)[number]

/** Why somebody is to be called: they asked for it, a quote is owed, or what they were promised is not kept. */
export const callBackCauses = ['asked', 'quote', 'promise', 'missed'] as const
export type CallBackCause = (typeof callBackCauses)[number]

export const callBackCauseWords: Readonly<Record<CallBackCause, string>> = {
  asked: 'Call back',
  quote: 'Quote owed',
  promise: 'Promise not kept',
  missed: 'We did not come',
}

/** `kept`: the promise was given back before anybody had to call. */
export const callBackStates = ['open', 'done', 'kept'] as const
export type CallBackState = (typeof callBackStates)[number]

/** What came of calling. `no-answer` leaves it on the list for the next day. */
export const callBackOutcomes = ['talked', 'no-answer'] as const
export type CallBackOutcome = (typeof callBackOutcomes)[number]

/** How a customer came to be promised a time. */
export const promiseWays = ['link', 'phone'] as const
export type PromiseWay = (typeof promiseWays)[number]
