/**
 * `npm run mutants -- --mutants N [--seed S]`: breaks the sums and the rules of a batch in N small ways, one at a time,
 * and sees whether a test notices. Prints JSON; exits 1 where fewer than 70 % are noticed.
 */
import { parseArgs } from 'node:util'
import { breakRooms } from './mutants/choose.ts'
import { makePlan, readFindings, readVerdicts } from './mutants/plan.ts'
import { runParts } from './mutants/run-parts.ts'
import { filesUnder } from './sources.ts'

const leastNoticed = 0.7
/** One a core: each has its own half of the tests, and both judge every mutant with what they have. */
const processes = 2
/** What is broken at loading cannot be switched, and is set aside: about one in twenty. */
const pickedForOne = 1.1

const { values } = parseArgs({
  options: { mutants: { type: 'string', default: '500' }, seed: { type: 'string', default: '1' } },
})
const wanted = Number(values.mutants)

/** Three seconds of hashing a mutant, for what the tests of the entries themselves notice as well. */
const tooSlow = 'tests/unit/batch/tampering.test.ts'
const tests = ['tests/unit/trade', 'tests/unit/batch', 'tests/property/trade', 'tests/property/batch', 'tests/vectors']
  .flatMap(filesUnder)
  .filter((path) => path.endsWith('.test.ts') && path !== tooSlow)
const parts = Array.from({ length: processes }, (_, part) => tests.filter((_, index) => index % processes === part))

const broken = await breakRooms(Math.ceil(pickedForOne * wanted) + 10, Number(values.seed))
makePlan({ ...broken, parts })
if (!(await runParts(parts.length))) process.exit(1)

const findings = parts.map((_, part) => readFindings(part))
const inTests = new Set(findings.flatMap(({ covered }) => covered))
const atLoading = new Set(findings.flatMap(({ loaded }) => loaded))
const setAside = broken.mutants.filter(({ id }) => atLoading.has(id) && !inTests.has(id))
const judged = broken.mutants.filter((mutant) => !setAside.includes(mutant)).slice(0, wanted)

const verdicts = parts.map((_, part) => readVerdicts(part))
const having = (verdict: string) => judged.filter(({ id }) => verdicts.some((of) => of(id) === verdict))
const endless = having('endless')
const noticed = having('noticed')
const killed = new Set([...endless, ...noticed])
const survivors = judged.filter((mutant) => !killed.has(mutant))
const told = survivors.map(({ id, where, what }) => `${where} ${what}${inTests.has(id) ? '' : ' (no test runs it)'}`)
console.log(
  JSON.stringify(
    {
      mutants: judged.length,
      killed: killed.size,
      ofThemEndless: endless.length,
      survived: survivors.length,
      setAsideAtLoading: setAside.length,
      survivors: told.sort(),
    },
    null,
    1,
  ),
)
process.exit(killed.size >= leastNoticed * judged.length ? 0 : 1)
