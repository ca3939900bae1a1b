/** Every field in a tree, also within the elements of it, in the order they stand. */
function fieldsIn(root: ParentNode): HTMLElement[] {
  return [...root.querySelectorAll<HTMLElement>('*')].flatMap((element) => [
    ...(element.dataset.path === undefined ? [] : [element]),
    ...(element.shadowRoot ? fieldsIn(element.shadowRoot) : []),
  ])
}

/** Brings the cursor to the field of an error, or as near to it as there is one. */
export function focusField(root: ParentNode, path: string): void {
  const fields = fieldsIn(root)
  const near =
    fields.find((field) => field.dataset.path === path) ??
    fields.find((field) => field.dataset.path?.startsWith(path)) ??
    fields.find((field) => ['[', '.'].some((step) => path.startsWith(`${field.dataset.path}${step}`)))
  near?.closest('details')?.setAttribute('open', '')
  near?.focus()
  near?.scrollIntoView({ block: 'center' })
}
