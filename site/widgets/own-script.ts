import calculatingFile from './calculating.ts?worker&url';

/**
 * The scripts that the guide starts by an address: what calculates, and what keeps the guide for use offline. Where the
 * browser asks for the word of a policy before it runs an address (Trusted Types), this is the only place that gives
 * it, for these two alone. The name of the policy stands in the header.
 */

const addresses = { calculating: calculatingFile, offline: `${import.meta.env.BASE_URL}sw.js` } as const;

interface TrustedTypes {
  createPolicy: (
    name: string,
    rules: { createScriptURL: (text: string) => string },
  ) => { createScriptURL: (text: string) => unknown };
}

const known: readonly string[] = Object.values(addresses);

const policy = (globalThis as unknown as { trustedTypes?: TrustedTypes }).trustedTypes?.createPolicy(
  'winter-bench-guide',
  {
    createScriptURL(text) {
      if (!known.includes(text)) throw new TypeError(`not a script of the guide: ${text}`);
      return text;
    },
  },
);

export { calculatingFile };

/** The address of a script of the guide, ready to be started. */
export function ownScript(name: keyof typeof addresses): string {
  const address = addresses[name];
  // What the policy gives back stands for a string wherever a string is asked for.
  return (policy?.createScriptURL(address) ?? address) as string;
}
