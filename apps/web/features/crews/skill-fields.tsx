'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import { LIFTING, PLUMBING_LICENCE, valveSkill } from '@almanac/service-rules/crews/crew-skills'
import { Checkbox } from '@almanac/ui/checkbox'
import { useSession } from '@/client/providers'

type Skills = Pick<CrewPerson, 'doesAll' | 'skills'>

/** What a person may do: everything, or what is ticked. */
export function SkillFields({ doesAll, skills, onChange }: Skills & { onChange: (skills: Skills) => void }) {
  const { figures } = useSession()
  const choices = [
    { skill: LIFTING, label: 'Heavy lifting', hint: 'Rebeds, installations, tanks going back' },
    { skill: PLUMBING_LICENCE, label: 'Plumbing license', hint: 'Installations' },
    ...figures.valves.map((valve) => ({ skill: valveSkill(valve.id), label: `Valve: ${valve.label}`, hint: undefined })),
  ]
  const toggle = (skill: string, on: boolean) =>
    onChange({ doesAll, skills: on ? [...skills, skill] : skills.filter((one) => one !== skill) })
  return (
    <fieldset className="flex flex-col gap-1">
      <legend className="mb-1 font-medium">May do</legend>
      <Checkbox label="All work" checked={doesAll} onChange={(event) => onChange({ doesAll: event.target.checked, skills })} />
      {doesAll
        ? null
        : choices.map(({ skill, label, hint }) => (
            <Checkbox
              key={skill}
              label={label}
              hint={hint}
              checked={skills.includes(skill)}
              onChange={(event) => toggle(skill, event.target.checked)}
            />
          ))}
    </fieldset>
  )
}
