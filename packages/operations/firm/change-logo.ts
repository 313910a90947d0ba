import type { ChangeLogoInput } from '@almanac/contract/firm'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { settingsIn } from '@almanac/database/read/firm-settings'
import { runCommand } from '@almanac/database/run-command'
import { cleanLogo } from '@almanac/files/clean-picture'
import { fileStore } from '@almanac/files/file-store'
import { newId } from '@almanac/runtime/ids'

/** Puts a logo at the head of the company's papers, drawn anew from what was sent, or takes it off. */
export async function changeLogo(scope: Scope & { personId: string }, input: ChangeLogoInput): Promise<{ version: number }> {
  const { version, picture } = input
  const logo = picture === null ? null : await cleanLogo(Buffer.from(picture, 'base64'))
  return runCommand(scope, 'firm.change-logo', input, async (tx, command) => {
    const { companyId } = scope
    await tx.companySettings.createMany({ data: [{ companyId, id: newId() }], skipDuplicates: true })
    const before = await settingsIn(tx, companyId)
    const { count } = await tx.companySettings.updateMany({
      where: { companyId, version: Math.max(1, version) },
      data: { logoWidth: logo?.width ?? null, logoHeight: logo?.height ?? null, version: { increment: 1 } },
    })
    await expectChanged(count, 'setting', version, {}, () => settingsIn(tx, companyId))
    const row = await tx.companySettings.findUniqueOrThrow({ where: { companyId }, select: { id: true, version: true } })
    const said = (there: boolean) => (there ? 'set' : null)
    await command.audit('changed', 'company-settings', row.id, {
      ...{ field: 'logo', from: said(before.logo !== null), to: said(logo !== null), note: null },
    })
    await command.announce('company-settings', row.id, row.version)
    // Last, so that whatever is refused leaves the file as it was.
    if (logo) await fileStore().put({ companyId, id: row.id }, logo.bytes)
    else await fileStore().remove({ companyId, id: row.id })
    return { version: row.version }
  })
}
