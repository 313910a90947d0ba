import type { ImportField } from './fields.ts'

/**
 * What firms write over a column, in English, German and Spanish, as folded words; order, case and punctuation do not matter. A phrase scores by how many of the header's words it explains, so
 * the longer phrase wins: "access notes" over "notes".
 */
const phrases: Record<ImportField, string> = {
  referenceNumber:
    'customer number, customer no, customer id, cust no, cust num, cust id, account number, account no, account, acct, acct no, acct num, client number, client no, client id, reference, reference number, ref, ref no, our ref, customer ref, id, record id, customer code, code, key, no, nr, kundennummer, kunden nr, kundennr, numero de cliente, n cliente',
  customerName:
    'customer, customer name, cust name, name, client, client name, account name, full name, first name, last name, surname, forename, family name, given name, first, last, company, company name, business name, homeowner, owner, owner name, householder, bill to, payer, kunde, kundenname, nachname, vorname, cliente, nombre, apellido, apellidos',
  contactName:
    'contact, contact name, contact person, attention, attn, ask for, site contact, tenant, occupier, key holder, ansprechpartner, contacto',
  phone:
    'phone, phone number, phone no, telephone, telephone number, tel, tel no, mobile, mobile phone, cell, cell phone, home phone, work phone, contact number, ph, fone, telefon, telefonnummer, handy, mobil, telefono, movil, celular',
  otherPhone:
    'second phone, other phone, phone 2, phone two, tel 2, telephone 2, mobile 2, cell 2, alternate phone, alternative phone, alt phone, additional phone, phone other, zweites telefon, otro telefono',
  email: 'email, e mail, email address, mail address electronic, e mail address, emailaddress, correo, correo electronico',
  street:
    'street, street address, address, address 1, address line 1, address line 2, address 2, addr, addr1, addr 1, street number, house, house number, site address, service address, property address, property, location, service location, site, strasse, anschrift, adresse, hausnummer, calle, direccion, domicilio',
  town: 'town, city, town city, village, municipality, suburb, place, ort, stadt, wohnort, ciudad, poblacion, localidad',
  postcode: 'postcode, post code, postal code, zip, zip code, zipcode, zip postcode, plz, postleitzahl, codigo postal, cp',
  region: 'state, region, county, province, st, state province',
  latitude: 'latitude, lat, gps lat, gps latitude, y coordinate',
  longitude: 'longitude, long, lon, lng, gps long, gps lon, gps longitude, x coordinate',
  accessNotes: 'access, access notes, access instructions, gate code, gate, key, key location, directions, dog, entry notes, how to get in',
  softenerLabel:
    'softener, softener model, model, unit, unit model, equipment, equipment model, make, make model, brand, system, system type, machine, label, valve model, water softener',
  tankPosition:
    'tank position, position, tank label, tank number, tank no, which tank, softener location, unit location, unit number, unit no',
  tank: 'tank, tank size, size, mineral tank, resin tank, vessel, vessel size, tank dimensions, capacity, grain capacity, rating, grain rating, grains capacity, softener size, unit size, pressure tank, cylinder, flasche, druckflasche, behalter, tanque, botella',
  tankCount: 'tank count, number of tanks, tanks, no of tanks, qty, quantity, count, how many tanks, qty tanks',
  resinVolume:
    'resin volume, resin cu ft, resin amount, cubic feet, cu ft, cuft, ft3, resin litres, resin liters, media volume, volume, resin qty, resin quantity, resin, harz, harzmenge, harzvolumen, resina, litros de resina',
  resinKind: 'resin kind, resin type, resin, media, media type, crosslink, cross link, resin crosslink, resin grade, mesh',
  installed:
    'installed, install date, installation date, date installed, installation, install, date of installation, install year, year installed, installed on, date of install, in service since, commissioned, start date, year, put in, date put in, fitted, date fitted, fitted on, fit date, fitting date, einbau, einbaudatum, eingebaut, eingebaut am, montage, installiert, instalado, instalacion, fecha de instalacion',
  bedBegan:
    'rebed, last rebed, rebed date, date of rebed, rebedded, last rebedded, resin date, resin changed, resin replaced, resin change, resin change date, last resin change, resin last changed, resin last replaced, new resin, new resin date, resin installed, bed date, bed installed, media changed, media date, year of resin, harz erneuert, harzwechsel, harz getauscht, cambio de resina, resina cambiada',
  lastSeen:
    'last seen, last visit, last visited, last service, last service date, last serviced, date of last service, date of last visit, serviced, service date, visited, visit date, last call, last annual, last checked, last inspection, last contact, last attended, letzte wartung, letzter besuch, wartung, ultima visita, ultimo servicio',
  supplyName:
    'water supply, supply, supply name, water source, source, utility, water utility, water company, water system, water, district, water district, provider, city water',
  disinfectant:
    'disinfectant, disinfection, chlorine type, chlorine or chloramine, chloramine, treatment, disinfectant type, sanitiser, sanitizer',
  hardness:
    'hardness, water hardness, raw hardness, hard, total hardness, hardness raw, hardness in, inlet hardness, grains hardness, grains, gpg, th, harte, wasserharte, gesamtharte, dureza',
  iron: 'iron, fe, iron level, raw iron, total iron, ferrous, eisen, hierro',
  chlorine: 'chlorine, free chlorine, cl, cl2, chlorine level, residual, chlorine residual, total chlorine, free cl, chlor, cloro',
  notes:
    'notes, note, comments, comment, remarks, remark, history, memo, details, description, misc, other, service notes, info, job notes, service history, bemerkung, bemerkungen, notizen, notiz, anmerkung, notas, observaciones, comentarios',
  consent:
    'consent, contact consent, may contact, marketing consent, ok to contact, may we contact, permission, opt in, gdpr, reminders, reminder ok, contact ok, preferred contact',
  mayEmail: 'may email, ok to email, email ok, email consent, email opt in, may we email, email permission',
  mayPhone:
    'may phone, may call, ok to call, ok to phone, call ok, phone ok, phone consent, may we phone, may we call, phone opt in, phone permission',
  mayWrite:
    'may write, may post, ok to mail, ok to post, mail ok, post ok, postal consent, may we write, may we mail, letter ok, mail opt in, post consent, mailing ok',
}

export const headerPhrases: readonly { field: ImportField; words: readonly string[] }[] = Object.entries(phrases).flatMap(([field, list]) =>
  list.split(',').map((phrase) => ({ field: field as ImportField, words: phrase.trim().split(' ') })),
)

/** Words that say nothing of what a column holds, and units, which are read for themselves. */
export const idleWords = new Set(
  'the of a an in at on to for our your is and or as by if any mg l ppm ppb gpg dh fh ug cu ft ft3 cuft litres liters litre liter mm dd yyyy yy date day'.split(
    ' ',
  ),
)
