/** What changed, as the events tell it; whoever shows it loads it again. */
export interface Change {
  kind: 'job' | 'piece' | 'check' | 'shop' | 'board' | 'profile' | 'floor'
  id: string
}
