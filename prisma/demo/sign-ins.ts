/** The demo's people who sign in. Invented; the addresses lie in a domain that is kept for examples, and the passwords are public. */
export const DEMO_SIGN_INS = [
  { role: 'owner', name: 'Marian Oakes', email: 'owner@larkmoor.example.com', password: 'larkmoor-owner', company: 'Larkmoor Soft Water' },
  {
    role: 'dispatcher',
    name: 'Dell Prior',
    email: 'dispatcher@larkmoor.example.com',
    password: 'larkmoor-dispatcher',
    company: 'Larkmoor Soft Water',
  },
  {
    role: 'technician',
    name: 'Tomas Reyes',
    email: 'technician@larkmoor.example.com',
    password: 'larkmoor-technician',
    company: 'Larkmoor Soft Water',
  },
  {
    role: 'owner',
    name: 'Niamh Tully',
    email: 'owner@brackwater.example.com',
    password: 'brackwater-owner',
    company: 'Brackwater Softeners',
  },
] as const
