import './materials.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { PlainForm } from '../../app/forms/plain-form'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { EmptyState } from '../../parts/empty'
import { Caution, Notice } from '../../parts/notice'
import { Lots } from './lots'
import { addressedMaterial, createMaterialsModel, materialForm } from './model'
import { WhereUsed } from './where-used'

/** One material: its form, and its lots beside it. */
export function MaterialPage({ address }: { address: string }) {
  const { id, isNew } = addressedMaterial(address)
  const app = useApp()
  const here = app.catalogue.materials.value.get(id)
  const loaded = app.catalogue.loaded.value
  const model = useMemo(() => createMaterialsModel(app), [app])
  const form = useMemo(() => materialForm(app, id), [app, id, loaded, here])
  useEffect(() => void model.readOnHand(), [model, app.catalogue.lots.value])
  if (!loaded) return <main class="materials" aria-busy="true" />
  if (here === undefined && !isNew) return <NoSuchMaterial />
  const archive = (archived: boolean) => here && void app.catalogue.save('material', { ...here, archived })
  return (
    <main class="materials material-page">
      <div class="materials-main">
        <header class="materials-head">
          <Button kind="plain" icon="arrow-left" label="Materials" href={addressOf({ place: 'materials' })} />
          <h1 class="material-title">{here?.name ?? 'New material'}</h1>
        </header>
        {here?.draft && (
          <Notice title="It came with a formula from a spreadsheet. Fill in what is known of it, and save." />
        )}
        {here?.hazards && <Caution text={here.hazards.caution} />}
        <Card label="The material">
          <PlainForm form={form} onSaved={() => {}} />
        </Card>
        {here && <WhereUsed uses={model.usesOf(id)} />}
        {here && (
          <div>
            <Button
              icon="package"
              label={here.archived ? 'Take out again' : 'Put away'}
              sub={here.archived ? 'back in the choices of formulas' : 'out of the choices of formulas, kept'}
              onPress={() => archive(here.archived !== true)}
            />
          </div>
        )}
      </div>
      <aside class="materials-side" aria-label="Lots">
        <h2>Lots</h2>
        {here ? (
          <Lots model={model} materialId={id} />
        ) : (
          <p class="materials-hint">Save the material, then its first lot can be written down.</p>
        )}
      </aside>
    </main>
  )
}

function NoSuchMaterial() {
  return (
    <main class="materials material-page">
      <EmptyState
        title="This material is not here"
        text="It may stand on another tablet, in a file that has not been brought in here, or its address was cut short."
        actions={<Button kind="filled" label="To the materials" href={addressOf({ place: 'materials' })} />}
      />
    </main>
  )
}
