/** What browsers that know trusted types offer, as far as it is used here. */
interface ScriptAddresses {
  createScriptURL: (url: string) => unknown
}

const { trustedTypes } = globalThis as {
  trustedTypes?: { createPolicy: (name: string, rules: ScriptAddresses) => ScriptAddresses }
}

/** The only maker of addresses that scripts are run from: those of this program’s own files. */
const policy = trustedTypes?.createPolicy('own-scripts', {
  createScriptURL: (url) => {
    if (new URL(url, location.href).origin !== location.origin)
      throw new TypeError(`${url} is not a script of this program.`)
    return url
  },
})

/** The address of one of this program’s own scripts, in the form that the page’s content policy asks for. */
export const ownScript = (url: string): string => (policy?.createScriptURL(url) ?? url) as string
