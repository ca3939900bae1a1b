const NAME = 'setwright'
const STORE = 'photographs'

/** A photograph that waits to be stored; `null` for one that is taken away. */
type Waiting = string | null

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(NAME, 1)
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE)
    asked.onsuccess = () => resolve(asked.result)
    asked.onerror = () => reject(asked.error)
  })
}

async function inStore<T>(
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const database = await opened()
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = database.transaction(STORE, mode)
      const asked = ask(transaction.objectStore(STORE))
      transaction.oncomplete = () => resolve(asked.result)
      transaction.onerror = () => reject(transaction.error)
      transaction.onabort = () => reject(transaction.error)
    })
  } finally {
    database.close()
  }
}

/** Keeps a photograph on this device until it is stored, as a data address; `null` for one taken away. */
export const keepPhoto = (key: string, image: Waiting) =>
  inStore('readwrite', (store) => store.put(image, key))

/** The photograph that waits on this device; `undefined` where none does. */
export const waitingPhoto = (key: string): Promise<Waiting | undefined> =>
  inStore('readonly', (store) => store.get(key) as IDBRequest<Waiting | undefined>)

/** Forgets a photograph on this device. */
export const dropPhoto = (key: string) => inStore('readwrite', (store) => store.delete(key))
