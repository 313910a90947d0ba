import type { contract } from './contract.ts'

/** What a change may be of: the entity that a notice names. `announce` takes no other, and each is read by some screen. */
export type ChangedEntity =
  | 'absence'
  | 'agreement'
  | 'bed'
  | 'calendar-feed'
  | 'call'
  | 'call-back'
  | 'colleague'
  | 'company-settings'
  | 'contact'
  | 'crew-day'
  | 'customer'
  | 'export'
  | 'firm-figure'
  | 'forecast-backtest'
  | 'forecast-months'
  | 'forecast-plan'
  | 'forecast-run'
  | 'guide'
  | 'import-batch'
  | 'job'
  | 'kit'
  | 'member'
  | 'picture'
  | 'plan'
  | 'reminders'
  | 'set-aside'
  | 'site'
  | 'softener'
  | 'stock-item'
  | 'vehicle'
  | 'visit'
  | 'water-supply'

type Contract = typeof contract
/** Every procedure by name: 'sites.list'. */
export type ProcedureName = {
  [Domain in keyof Contract & string]: `${Domain}.${keyof Contract[Domain] & string}`
}[keyof Contract & string]

/** Each procedure is either a query or a command: tests/isolation/changes. */
export type QueryName = keyof typeof SHOWS
export type CommandName = keyof typeof CHANGES

/** What a bed's forecast follows from, with the forecast itself. */
const FORECAST = ['bed', 'forecast-run'] as const
/** What a job's place on a day sheet follows from. */
const BOARD = ['job', 'visit', 'crew-day', 'colleague', 'vehicle', 'absence', 'company-settings', 'site'] as const

/** Who is called about a place. */
const WHOM = ['customer', 'contact'] as const

/** Each query, with what it shows: a change of one of these, and of nothing else, has it fetched again. */
export const SHOWS = {
  'agreements.ofSite': ['agreement', 'job', 'visit', 'softener', 'site'],
  'agreements.rounds': [...BOARD, 'agreement', 'customer', 'softener', 'forecast-plan'],
  'archive.list': ['customer', 'site', 'softener'],
  'audit.list': ['site', 'customer', 'contact', 'softener', 'bed', 'job', 'visit'],
  'bedChoice.facts': [...FORECAST, ...WHOM, 'softener', 'site', 'job', 'stock-item', 'water-supply', 'company-settings', 'firm-figure'],
  'beds.explain': [...FORECAST, 'softener', 'site', 'water-supply'],
  'beds.page': [...FORECAST, 'softener', 'site', 'customer', 'contact', 'job', 'visit', 'water-supply'],
  'beds.askNext': [...FORECAST, 'softener', 'site', 'customer', 'contact', 'water-supply'],
  'calls.list': ['call', 'site', 'customer', 'job'],
  'calls.callBacks': ['call-back', 'call', 'site', 'customer', 'contact', 'job', 'visit'],
  'calls.ofSite': [...FORECAST, 'call', 'call-back', 'site', 'customer', 'contact', 'softener', 'job', 'visit'],
  'crews.list': ['colleague', 'vehicle', 'absence', 'member'],
  'crews.own': ['colleague', 'absence'],
  'daySheets.day': [...BOARD, 'customer', 'contact', 'bed', 'kit', 'stock-item', 'firm-figure'],
  'daySheets.fits': [...BOARD, 'bed', 'firm-figure'],
  'daySheets.crewChoices': ['colleague', 'vehicle', 'absence', 'crew-day'],
  'due.months': ['forecast-months', 'forecast-run', 'forecast-backtest', 'company-settings', 'water-supply'],
  'due.beds': [...FORECAST, 'forecast-plan', 'softener', 'site', 'customer', 'contact', 'call', 'job', 'visit', 'water-supply'],
  'due.desk': [...FORECAST, ...BOARD, 'forecast-months', 'forecast-backtest', 'softener', 'call'],
  'erase.previewCustomer': ['customer', 'contact', 'site', 'export', 'picture', 'reminders'],
  'erase.previewContact': ['contact', 'export', 'reminders'],
  'erase.previewColleague': ['colleague', 'export'],
  'exports.list': ['export'],
  'field.setAside': ['set-aside', 'visit', 'job', 'colleague'],
  'find.look': ['site', 'customer', 'contact', 'softener', 'bed', 'job', 'visit'],
  'firm.figures': ['firm-figure'],
  'firm.drives': ['firm-figure', 'visit'],
  'firm.settings': ['company-settings'],
  'firm.letterhead': ['company-settings'],
  'firm.holidays': ['company-settings'],
  'firm.history': ['firm-figure', 'company-settings'],
  'forecasts.trackRecord': ['forecast-backtest', 'forecast-run'],
  'forecasts.policy': ['forecast-run', 'company-settings', 'firm-figure', 'water-supply'],
  'forecasts.plan': ['forecast-plan', 'company-settings'],
  'guides.ofSite': ['guide', 'softener', 'site'],
  'imports.list': ['import-batch'],
  'imports.batch': ['import-batch'],
  'imports.rows': ['import-batch'],
  'imports.beforeUndo': ['import-batch', 'site', 'customer', 'contact', 'softener', 'bed', 'job'],
  'jobs.list': [...FORECAST, 'job', 'visit', 'site'],
  'jobs.overview': ['job', 'visit'],
  'jobs.get': [...FORECAST, ...BOARD, 'agreement', 'customer', 'contact', 'softener', 'kit'],
  'jobs.places': [...BOARD, 'firm-figure'],
  'jobs.choices': ['site', 'softener', 'bed', 'job'],
  'materials.ofJob': ['kit', 'job', 'visit', 'stock-item'],
  'merging.list': ['customer', 'site'],
  'merging.townsOfSites': ['site'],
  'merging.beforeUndo': ['customer', 'site', 'contact', 'softener', 'job', 'call'],
  'people.list': ['member', 'colleague'],
  'pictures.ofJob': ['picture', 'job', 'visit'],
  'pictures.ofBed': ['picture', 'job', 'visit', 'bed'],
  'plans.get': ['plan'],
  'reminders.list': ['reminders', 'site', 'contact', 'customer'],
  'reminders.counts': ['reminders'],
  'reminders.messages': ['reminders'],
  'reminders.answers': ['reminders', 'site', 'contact'],
  'reminders.preview': [...FORECAST, 'reminders', 'site', 'contact', 'company-settings'],
  'reminders.texts': ['reminders', 'company-settings'],
  'reports.readers': ['reminders', 'visit', 'contact', 'customer', 'picture'],
  'reminders.previewText': [...FORECAST, 'site', 'contact', 'customer', 'company-settings'],
  /** A person's own sessions are no record of the company; ending one fetches them again by itself. */
  'session.list': [],
  'session.passkeys': [],
  'sites.list': [...FORECAST, 'site', 'customer', 'softener', 'job', 'visit'],
  'sites.page': [...FORECAST, 'site', 'customer', 'contact', 'softener', 'job', 'visit', 'water-supply'],
  'sites.history': [...FORECAST, 'site', 'customer', 'contact', 'softener', 'job', 'visit', 'water-supply', 'reminders'],
  'sites.nearby': ['site', 'company-settings'],
  'sites.supplies': ['water-supply'],
  'sites.customers': ['customer', 'site'],
  'softeners.settings': ['softener', 'site', 'bed', 'water-supply', 'firm-figure'],
  'stores.orders': ['stock-item', 'kit', 'job', 'visit', 'forecast-months', 'firm-figure'],
  'stores.loadList': ['kit', 'crew-day', 'stock-item', 'job', 'visit'],
  'stores.items': ['stock-item'],
  'stores.movements': ['stock-item'],
  'visits.today': [...BOARD],
  'visits.get': [...BOARD, 'bed', 'softener', 'contact', 'kit', 'stock-item', 'water-supply'],
  'water.supplies': ['water-supply', 'site'],
  'water.supply': [...FORECAST, 'water-supply', 'site'],
  'water.site': ['site', 'softener', 'water-supply'],
  'week.towns': [...BOARD, ...FORECAST],
  'windows.ofJob': ['job', 'visit'],
  'windows.feeds': ['calendar-feed', 'colleague', 'crew-day'],
} as const satisfies Partial<Record<ProcedureName, readonly ChangedEntity[]>>

/** Each command, with what it may change at once; what follows later (a forecast) is told by its own notice. */
export const CHANGES = {
  'agreements.add': ['agreement'],
  'agreements.renew': ['agreement'],
  'agreements.end': ['agreement'],
  'agreements.settleTurn': ['agreement'],
  'agreements.propose': ['agreement', 'job'],
  'archive.softener': ['agreement', 'customer', 'contact', 'site', 'softener', 'bed'],
  'archive.site': ['agreement', 'customer', 'contact', 'site', 'softener', 'bed'],
  'archive.customer': ['agreement', 'customer', 'contact', 'site', 'softener', 'bed'],
  'archive.restoreSoftener': ['agreement', 'customer', 'contact', 'site', 'softener', 'bed'],
  'archive.restoreSite': ['agreement', 'customer', 'contact', 'site', 'softener', 'bed'],
  'archive.restoreCustomer': ['agreement', 'customer', 'contact', 'site', 'softener', 'bed'],
  'bedChoice.keepDecision': ['bed'],
  'beds.changeFacts': ['bed', 'softener', 'site'],
  'beds.inspect': ['bed'],
  'calls.record': ['call', 'call-back', 'job', 'bed'],
  'calls.settle': ['call-back'],
  'crews.addPerson': ['colleague'],
  'crews.changePerson': ['colleague'],
  'crews.addVehicle': ['vehicle'],
  'crews.changeVehicle': ['vehicle'],
  'closing.close': ['company-settings', 'export', 'member'],
  'closing.keep': ['company-settings', 'member'],
  'crews.addAbsence': ['absence'],
  'crews.takeBackAbsence': ['absence'],
  'daySheets.open': ['crew-day'],
  'daySheets.copy': ['crew-day'],
  'daySheets.change': ['crew-day', 'visit', 'call-back'],
  'erase.customer': ['agreement', 'customer', 'contact', 'site', 'reminders', 'export', 'picture'],
  'erase.contact': ['contact', 'site', 'reminders', 'export'],
  'erase.colleague': ['colleague', 'member', 'export'],
  'exports.start': ['export'],
  'field.send': ['agreement', 'visit', 'job', 'site', 'softener', 'bed', 'kit', 'stock-item', 'set-aside'],
  'field.settle': ['set-aside'],
  'firm.changeFigure': ['firm-figure'],
  'firm.resetFigure': ['firm-figure'],
  'firm.takeDrives': ['firm-figure'],
  'firm.changeSettings': ['company-settings'],
  'firm.changeLogo': ['company-settings'],
  'forecasts.checkAgain': ['forecast-backtest'],
  'guides.begin': ['guide'],
  'guides.withdraw': ['guide'],
  'imports.check': ['import-batch'],
  'imports.apply': ['import-batch'],
  'imports.readAgain': ['import-batch'],
  'imports.discard': ['import-batch'],
  'imports.undo': ['import-batch', 'site', 'customer', 'contact', 'softener', 'bed', 'water-supply', 'job', 'visit'],
  'jobs.propose': ['job'],
  'jobs.proposePlanned': ['job'],
  'jobs.proposeOne': ['job'],
  'jobs.book': ['job', 'visit', 'kit', 'call-back'],
  'jobs.moveVisit': ['job', 'visit', 'kit', 'call-back'],
  'jobs.callOffVisit': ['job', 'visit', 'kit', 'call-back'],
  'jobs.missVisit': ['job', 'visit', 'kit', 'call-back'],
  'jobs.sayUntil': ['visit'],
  'jobs.change': ['job', 'visit', 'call-back'],
  'jobs.hold': ['job', 'visit', 'kit', 'call-back'],
  'jobs.callOff': ['job', 'visit', 'kit', 'call-back'],
  'jobs.resume': ['job'],
  'materials.set': ['job', 'kit'],
  'materials.handOver': ['agreement', 'job', 'kit', 'stock-item'],
  'materials.takeBack': ['job', 'kit', 'stock-item'],
  'merging.customers': ['agreement', 'customer', 'contact', 'site', 'call', 'reminders'],
  'merging.sites': ['agreement', 'site', 'softener', 'bed', 'job', 'contact', 'call', 'call-back', 'reminders', 'customer'],
  'merging.towns': ['site', 'forecast-months'],
  'merging.undo': [
    'agreement',
    'customer',
    'site',
    'softener',
    'bed',
    'job',
    'contact',
    'call',
    'call-back',
    'reminders',
    'forecast-months',
  ],
  'people.invite': ['member'],
  'people.withdraw': ['member'],
  'people.changeRole': ['member'],
  'people.endAccess': ['member'],
  'people.endSession': ['member'],
  'people.passwordLink': [],
  'pictures.begin': ['picture'],
  'pictures.noteUnsigned': ['picture'],
  'plans.start': ['plan'],
  'plans.stop': ['plan'],
  'plans.accept': ['plan', 'crew-day', 'job', 'visit', 'kit', 'call-back'],
  'reminders.decide': ['reminders'],
  'reminders.step': ['reminders'],
  'reports.send': ['reminders'],
  'reminders.endLink': ['reminders'],
  'reminders.saveText': ['reminders'],
  'reminders.standardText': ['reminders'],
  'session.changeEmail': [],
  'session.setLanguage': [],
  'session.switchCompany': [],
  'session.end': [],
  'session.removePasskey': [],
  'sites.add': ['site', 'customer', 'contact', 'softener', 'bed'],
  'sites.change': ['site', 'bed'],
  'sites.changeCustomer': ['customer'],
  'sites.changeHolder': ['agreement', 'site', 'customer', 'contact'],
  'sites.addContact': ['contact'],
  'sites.changeContact': ['contact'],
  'sites.archiveContact': ['contact'],
  'sites.setConsent': ['contact'],
  'sites.addSoftener': ['site', 'softener', 'bed'],
  'sites.changeSoftener': ['softener'],
  'sites.addPreTreatment': ['softener'],
  'sites.endPreTreatment': ['softener'],
  'stores.pick': ['kit', 'crew-day', 'stock-item'],
  'stores.addItem': ['stock-item'],
  'stores.addUsualItems': ['stock-item'],
  'stores.changeItem': ['stock-item'],
  'stores.archiveItem': ['stock-item'],
  'stores.receive': ['stock-item'],
  'stores.count': ['stock-item'],
  'visits.start': ['visit', 'job'],
  'visits.closeOut': ['agreement', 'visit', 'job', 'site', 'softener', 'bed', 'kit', 'stock-item'],
  'water.addSupply': ['water-supply'],
  'water.addPeriod': ['water-supply'],
  'water.withdrawPeriod': ['water-supply'],
  'water.recordTest': ['site'],
  'water.withdrawTest': ['site'],
  'windows.offer': ['job', 'visit', 'kit'],
  'windows.confirm': ['job', 'visit', 'kit', 'call-back'],
  'windows.promise': ['visit', 'call-back'],
  'windows.withdraw': ['job', 'visit', 'kit'],
  'windows.beginFeed': ['calendar-feed'],
  'windows.beginOfficeFeed': ['calendar-feed'],
  'windows.endFeed': ['calendar-feed'],
} as const satisfies Partial<Record<ProcedureName, readonly ChangedEntity[]>>

/** The queries that show any of these; all of them for 'everything', which is said when notices may have been missed. */
export function queriesShowing(changed: Iterable<ChangedEntity | 'everything'>): Set<QueryName> {
  const entities = new Set<string>(changed)
  const names = Object.keys(SHOWS) as QueryName[]
  return new Set(entities.has('everything') ? names : names.filter((name) => SHOWS[name].some((entity) => entities.has(entity))))
}
