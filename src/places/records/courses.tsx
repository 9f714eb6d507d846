import { useFormat } from '../../app/format'
import { Plot } from '../../app/late-plot'
import type { Course } from '../../batch/stability-trend'
import { coursePicture } from './course-picture'
import { CourseSvg } from './course-svg'
import { courseWords } from './stability-words'

/** How every measure goes under every condition: picture and words. */
export function Courses({ courses }: { courses: readonly Course[] }) {
  const shown = courses.filter(({ points }) => points.length > 0)
  if (shown.length === 0) return null
  return (
    <section aria-labelledby="courses">
      <h2 id="courses">Over time</h2>
      <div class="courses">
        {shown.map((course) => (
          <CourseFigure key={`${course.measure.id} ${course.condition.id}`} course={course} />
        ))}
      </div>
    </section>
  )
}

function CourseFigure({ course }: { course: Course }) {
  const format = useFormat()
  const picture = coursePicture(course, format)
  const words = courseWords(course, format)
  const title = `${course.measure.label}, ${course.condition.label}`
  const label = `${title}. ${words.join(' ')}`
  return (
    <figure class="course">
      <figcaption>
        <h3>{title}</h3>
        {words.map((sentence) => (
          <p key={sentence} class={sentence.startsWith('Indication') ? 'course-indication' : undefined}>
            {sentence}
          </p>
        ))}
      </figcaption>
      <div class="course-plot">
        <Plot label={label} heightPx={260} {...picture} />
      </div>
      <CourseSvg picture={picture} label={label} />
    </figure>
  )
}
