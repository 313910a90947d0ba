/** The demo's people who sign in. Invented; the addresses lie in a domain that is kept for examples. Passwords are made where the demo is set up. */
export const DEMO_SIGN_INS = [
  { role: 'owner', name: 'Marian Oakes', email: 'owner@larkmoor.example.com', company: 'Larkmoor Soft Water' },
  {
    role: 'dispatcher',
    name: 'Dell Prior',
    email: 'dispatcher@larkmoor.example.com',
    company: 'Larkmoor Soft Water',
  },
  {
    role: 'technician',
    name: 'Tomas Reyes',
    email: 'technician@larkmoor.example.com',
    company: 'Larkmoor Soft Water',
  },
  {
    role: 'owner',
    name: 'Niamh Tully',
    email: 'owner@brackwater.example.com',
    company: 'Brackwater Softeners',
  },
] as const
