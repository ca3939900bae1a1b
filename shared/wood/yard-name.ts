/** What lumber of these woods is sold as, whatever the tree: commercial names, from memory. */
const commercial: Record<string, string> = {
  'Maple, sugar': 'hard maple',
  'Maple, black': 'hard maple',
  'Maple, red': 'soft maple',
  'Maple, silver': 'soft maple',
  'Oak, northern red': 'red oak',
  'Oak, southern red': 'red oak',
  'Yellow-poplar': 'poplar',
  'Walnut, black': 'black walnut',
  'Cherry, black': 'cherry',
  'Basswood, American': 'basswood',
  'Beech, American': 'beech',
  'Elm, American': 'elm',
  'Sycamore, American': 'sycamore',
}

/** Names that keep their capital in running text. */
const proper =
  /^(Douglas|Atlantic|Port|Spanish|California|Oregon|Pacific|Sitka|Engelmann|Virginia|Brazilian|Indian|African|American)/

const small = (word: string): string =>
  proper.test(word) ? word : word.charAt(0).toLowerCase() + word.slice(1)

/**
 * A wood by the name a yard knows it by: the commercial name where lumber of several trees is sold as one, else the
 * handbook’s with its words in spoken order.
 *
 * @example yardName('Maple, sugar') // 'hard maple'
 * @example yardName('Oak, bur (white oak group)') // 'white oak'
 * @example yardName('Ash, white') // 'white ash'
 * @example yardName('Cedar, western redcedar') // 'western redcedar'
 * @example yardName('Douglas-fir, coast') // 'coast Douglas-fir'
 */
export function yardName(name: string): string {
  const known = commercial[name]
  if (known) return known
  const [, group] = /\((\w+(?: \w+)?) group\)/.exec(name) ?? []
  if (group) return group
  const [main, kind] = name.replace(/\s*\([^)]*\)/g, '').split(', ')
  if (kind === undefined) return small(main!)
  return kind.toLowerCase().includes(main!.toLowerCase()) ? kind : `${small(kind)} ${small(main!)}`
}
