import type { ThermalCourse } from '../../../batch/thermal-course'
import { TypedField } from '../typed-field'
import { ReadingList } from './reading-list'
import { errorOf, useStep } from './use-step'

interface ThermalEntryProps {
  step: { readonly id: string; readonly vessel: string }
  course: ThermalCourse
  onEnter: () => void
}

/** What was read so far, the thermometer, and the room, bath or plate that the time depends on. */
export function ThermalEntry({ step, course, onEnter }: ThermalEntryProps) {
  const { state, vessel, vesselName, format, number } = useStep(step)
  const readings = state.vessels.get(vessel)?.readings ?? []
  const known = surroundingsOf(course)
  return (
    <>
      <ReadingList
        label={`Temperature of ${vesselName}`}
        rows={readings.map((reading) => ({
          id: reading.entry,
          at: format.time(reading.atMs),
          text: `${format.number(reading.temperatureC)} °C`,
        }))}
      />
      <div class="process-fields">
        <TypedField
          name="temperature"
          label="Thermometer"
          unit="°C"
          error={errorOf(number('temperature', 'temperature'))}
          onEnter={onEnter}
        />
        <TypedField
          name="surroundings"
          label={labelOf(course.by)}
          unit="°C"
          placeholder={known === undefined ? (course.by === 'plate' ? 'no probe' : undefined) : format.number(known)}
          error={errorOf(number('surroundings', 'temperature'))}
          onEnter={onEnter}
        />
      </div>
    </>
  )
}

/** What is known of what the vessel stands in, °C. */
function surroundingsOf({ by, roomC, bathC, setC }: ThermalCourse): number | undefined {
  switch (by) {
    case 'air':
      return roomC
    case 'bath':
      return bathC
    case 'plate':
      return setC
  }
}

function labelOf(by: ThermalCourse['by']): string {
  switch (by) {
    case 'air':
      return 'Room'
    case 'bath':
      return 'Bath'
    case 'plate':
      return 'Plate’s probe set to'
  }
}
