import { html, LitElement } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { LibraryProfile } from '../../shared/library.ts'
import { newKey } from '../api.ts'
import { addProfile, changeProfile, profiles, storedProfile } from '../api-profiles.ts'
import type { Keeping } from '../elements/profile-sources.ts'
import '../elements/profile-sources.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { JobFile } from '../job-file.ts'
import { libraryFileOf, libraryFileOfJob } from '../library-file.ts'
import { noteChange, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'

/** The library beside a job that is written: loads it when it is asked for, keeps the job's profile in it. */
@customElement('job-library')
export class JobLibrary extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) file!: JobFile
  @property({ attribute: false }) profile?: Profile
  @property({ type: Boolean }) disabled = false
  @state() private library?: LibraryProfile[]
  /** How keeping went. */
  @state() private message = ''
  /** Why the library is not there. */
  @state() private failure = ''
  @state() private busy = false
  /** The key what is kept is sent under until it is stored, so that a lost answer keeps it once. */
  private sending?: { of: string; key: string }
  private unwatch?: () => void

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges(({ kind }) => {
      if (kind === 'profile' && this.library) void this.load()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  private readonly load = async () => {
    try {
      const all = await profiles()
      this.library = all.sort((a, b) => a.name.localeCompare(b.name))
      this.failure = ''
    } catch (failure) {
      this.failure = (failure as Error).message
    }
  }

  private readonly keep = async ({ detail }: CustomEvent<Keeping>) => {
    this.busy = true
    this.message = ''
    try {
      this.message = await (detail.versionOf ? this.keepVersion(detail.versionOf) : this.keepNew(detail.name))
    } catch (failure) {
      this.message = (failure as Error).message
    } finally {
      this.busy = false
    }
  }

  private async keepNew(name: string): Promise<string> {
    const file = libraryFileOfJob(this.file, name)
    const of = JSON.stringify(file)
    const key = this.sending?.of === of ? this.sending.key : newKey()
    this.sending = { of, key }
    const kept = await addProfile({ ...file, key })
    delete this.sending
    noteChange({ kind: 'profile', id: kept.id })
    return `${kept.name} is in the library.`
  }

  /** What the library says of it beside its shape stays; a sheet that no longer gives this shape goes. */
  private async keepVersion(id: string): Promise<string> {
    const stored = await storedProfile(id)
    const { sheet: _sheet, joints: _joints, ...rest } = libraryFileOf(stored)
    const { name: _name, ...own } = libraryFileOfJob(this.file, stored.name)
    const kept = await changeProfile(id, stored.revision, { ...rest, ...own })
    noteChange({ kind: 'profile', id })
    return `${kept.name} has version ${kept.revision} in the library now.`
  }

  override render() {
    return html`<profile-sources
      .file=${this.file}
      .profile=${this.profile}
      .library=${this.library}
      .disabled=${this.disabled}
      .message=${this.message || this.failure}
      .busy=${this.busy}
      @look=${this.load}
      @keep=${this.keep}
    ></profile-sources>`
  }
}
