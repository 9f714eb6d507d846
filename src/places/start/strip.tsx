import { useFormat } from '../../app/format'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import type { StartProps } from './shared'

/** Which formula and revision, and who is at work. */
export const Strip = ({ house, setUp, onPeople }: StartProps & { onPeople: () => void }) => {
  const format = useFormat()
  const { revision, header } = setUp
  const { performs, checks } = header.people
  const approved = revision.approvedBy
    ? `, approved by ${revision.approvedBy}${revision.approvedAt ? ` ${format.date(revision.approvedAt)}` : ''}`
    : ', not approved yet'
  const of = `${house.formula.name} ${house.formula.code} r${revision.number}`
  return (
    <header class="start-strip">
      <Button kind="plain" icon="arrow-left" label="Bench" href={addressOf({ place: 'bench' })} />
      <div class="start-title">
        <h1>Start a batch</h1>
        <p title={of}>
          {of}
          {approved}
        </p>
      </div>
      <Button kind="plain" label="Change" name="Change formula or revision" href={addressOf({ place: 'start' })} />
      <Button
        icon="users"
        label={checks ? `${performs.initials} weighs, ${checks.initials} checks` : `${performs.initials} weighs`}
        onPress={onPeople}
      />
    </header>
  )
}
