/** Keeps the guide for use without a network, and offers a new version when there is one. */

/** The address of a script of our own, where the browser asks for the word of a policy that it is. */
function ownScript(address: string): string {
  const types = (globalThis as unknown as { trustedTypes?: TrustedTypes }).trustedTypes;
  const policy = types?.createPolicy('winter-bench-guide', { createScriptURL: (text) => text });
  // What the policy gives back stands for a string wherever a string is asked for.
  return (policy?.createScriptURL(address) ?? address) as string;
}

interface TrustedTypes {
  createPolicy: (
    name: string,
    rules: { createScriptURL: (text: string) => string },
  ) => { createScriptURL: (text: string) => unknown };
}

/** Asked once: all that was typed is kept already, so that the new version begins where this one stopped. */
async function offer(worker: ServiceWorker): Promise<void> {
  const { notice } = await import('./notice.ts');
  notice('new-version', 'A new version of this guide is here. What you have typed is kept.', [
    {
      words: 'Use it now',
      take: () => {
        navigator.serviceWorker.addEventListener('controllerchange', () => {
          location.reload();
        });
        worker.postMessage('take over');
      },
    },
  ]);
}

export async function keepForOffline(): Promise<void> {
  // Not on a page that is not secure, and not in every private window.
  const { serviceWorker } = navigator as { serviceWorker?: ServiceWorkerContainer };
  if (!serviceWorker) return;
  const registration = (await serviceWorker.register(ownScript(`${import.meta.env.BASE_URL}sw.js`), {
    updateViaCache: 'none',
  })) as ServiceWorkerRegistration | undefined;
  // The first version has nothing to take the place of.
  if (!registration || !serviceWorker.controller) return;
  if (registration.waiting) void offer(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const worker = registration.installing;
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed') void offer(worker);
    });
  });
}
