// Makes species.json from species.csv: `node seed/species.mjs`. Every value keeps its source and how sure it is.
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const here = (name) => new URL(name, import.meta.url)

/** Column of the table → field of a species, and its word in `field_confidence`. */
const VALUES = {
  sg_green: ['sgGreen', 'sgG'],
  sg_12: ['sg12', 'sg12'],
  moe_12_GPa: ['moeGPa', 'moe'],
  mor_12_MPa: ['morMPa', 'mor'],
  side_hardness_12_N: ['hardnessN', 'hard'],
  shrink_radial_pct: ['shrinkRadialPct', 'R'],
  shrink_tangential_pct: ['shrinkTangentialPct', 'T'],
  shrink_volumetric_pct: ['shrinkVolumetricPct', 'V'],
  cr: ['cr', 'cr'],
  ct: ['ct', 'ct'],
}

/** Fields of one line of comma-separated values; quotes may hold commas and doubled quotes. */
function fieldsOf(line) {
  const fields = [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)]
  return fields.map(([, quoted, plain]) => (quoted === undefined ? plain : quoted.replaceAll('""', '"')))
}

/** `cross: sgG sg12; memory: V` → which word stands for which confidence. */
function confidences(text) {
  const groups = text.split(';').map((group) => group.split(':'))
  return new Map(
    groups.flatMap(([how, words]) =>
      words
        .trim()
        .split(/\s+/)
        .map((word) => [word, how.trim()]),
    ),
  )
}

/** Lower case, text in parentheses dropped, runs of other characters to `-`: as `speciesKey` in shared/wood. */
const keyOf = (name) =>
  name
    .replace(/\([^)]*\)/g, ' ')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')

function speciesOf(row) {
  const sure = confidences(row.field_confidence)
  const values = Object.entries(VALUES).flatMap(([column, [field]]) =>
    row[column] === '' ? [] : [[field, Number(row[column])]],
  )
  const safe = Object.entries(VALUES).every(
    ([column, [field, word]]) =>
      field === 'shrinkVolumetricPct' || (row[column] !== '' && sure.get(word) !== 'memory'),
  )
  return {
    key: keyOf(row.common_name),
    name: row.common_name,
    botanical: row.botanical_name,
    kind: row.kind,
    ...Object.fromEntries(values),
    source: row.source,
    confidence: row.confidence,
    fieldConfidence: row.field_confidence,
    safe,
    ...(row.notes === '' ? {} : { notes: row.notes }),
  }
}

/** The table of woods as JSON, one wood a line. */
export function woodsJson(csv) {
  const [head, ...lines] = csv.trim().split(/\r?\n/)
  const columns = fieldsOf(head)
  const woods = lines.map((line) => {
    const fields = fieldsOf(line)
    return speciesOf(Object.fromEntries(columns.map((column, i) => [column, fields[i]])))
  })
  return `[\n${woods.map((wood) => JSON.stringify(wood)).join(',\n')}\n]\n`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(here('species.json'), woodsJson(readFileSync(here('species.csv'), 'utf8')))
}
