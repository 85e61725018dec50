import { ownScript } from './own-script.ts';

/** Keeps the guide for use without a network, and offers a new version when there is one. */

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
  const registration = (await serviceWorker.register(ownScript('offline'), {
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
