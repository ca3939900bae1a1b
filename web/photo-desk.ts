import type { ReactiveController, ReactiveControllerHost } from 'lit'
import { Refusal } from './api.ts'
import { profilePhoto, putProfilePhoto } from './api-profiles.ts'
import { dropPhoto, keepPhoto, waitingPhoto } from './photo-store.ts'

/** The photograph behind a profile: kept on this device until the server has it. */
export class PhotoDesk implements ReactiveController {
  /** As a data address; empty where there is none. */
  image = ''
  /** What went wrong with it, for a person. */
  message = ''
  private readonly host: ReactiveControllerHost
  /** The photograph of a draft that is taken over from another tab. */
  private adopted: string | null | undefined

  constructor(host: ReactiveControllerHost) {
    this.host = host
    host.addController(this)
  }

  hostConnected() {}

  private show(image: string, message = '') {
    this.image = image
    this.message = message
    this.host.requestUpdate()
  }

  /** What waits on this device under the key, else what is stored with the profile. */
  async load(key: string, id: string | undefined): Promise<void> {
    try {
      if (this.adopted !== undefined) await keepPhoto(key, this.adopted)
      this.adopted = undefined
      const waiting = await waitingPhoto(key)
      this.show((waiting === undefined ? id && (await profilePhoto(id)) : waiting) ?? '')
    } catch (failure) {
      const none = failure instanceof Refusal && failure.status === 404
      this.show('', none ? '' : `The photograph cannot be fetched: ${(failure as Error).message}`)
    }
  }

  /** Shows another photograph, or none, and keeps it until it is stored. */
  async keep(key: string, image: string | null): Promise<void> {
    this.show(image ?? '')
    try {
      await keepPhoto(key, image)
    } catch {
      this.show(image ?? '', 'This device has no room to keep the photograph: save now.')
    }
  }

  /** Stores what waits under the key with the profile; what is refused goes on waiting. */
  async send(key: string, id: string): Promise<void> {
    try {
      const waiting = await waitingPhoto(key)
      if (waiting === undefined) return
      if (key !== id) {
        await keepPhoto(id, waiting)
        await dropPhoto(key)
      }
      await putProfilePhoto(id, waiting)
      await dropPhoto(id)
      this.show(this.image)
    } catch (failure) {
      this.show(
        this.image,
        `The photograph is kept on this device, but not stored yet: ${(failure as Error).message}`,
      )
    }
  }

  /** Takes the photograph of another draft over, to be kept under the next key that is loaded. */
  async adopt(key: string): Promise<void> {
    this.adopted = await waitingPhoto(key).catch(() => undefined)
  }

  /** Forgets the photograph of a draft that is dropped. */
  async drop(key: string): Promise<void> {
    await dropPhoto(key).catch(() => undefined)
  }
}
