import { roleHints, roles, roleWords } from '@almanac/records/role'
import { ChoiceGroup } from '@almanac/ui/choice-group'

type Props = { value: string; hint?: string; required?: boolean; onChange: (role: string) => void }

/** What somebody may do here, each role with what it means. */
export function RoleChoice({ value, hint, required, onChange }: Props) {
  return (
    <ChoiceGroup
      label="Role"
      name="role"
      hint={hint}
      required={required}
      choices={roles.map((role) => ({
        value: role,
        label: <span className="inline-block first-letter:uppercase">{roleWords[role]}</span>,
        hint: roleHints[role],
      }))}
      value={value}
      onChange={onChange}
    />
  )
}
