// Keeps the page for places without a signal. The browser stores one whole
// version; a newer one waits beside it until the user takes it.

/**
 * @param {object} tell
 * @param {() => void} [tell.ready] the page now works without a network, said once after the first visit
 * @param {(take: () => void) => void} [tell.waiting] a newer version is there; take() reloads the page with it
 */
export async function keepOffline(tell) {
  if (!('serviceWorker' in navigator) || !location.protocol.startsWith('http')) return;
  const workers = navigator.serviceWorker;
  let registration;
  try {
    registration = await workers.register(new URL('sw.js', document.baseURI), { updateViaCache: 'none' });
  } catch {
    return; // private windows of some browsers: the page works, but not offline
  }

  let taken = false;
  const offer = () =>
    tell.waiting?.(() => {
      taken = true;
      registration.waiting?.postMessage('skip');
    });
  workers.addEventListener('controllerchange', () => {
    if (taken) location.reload(); // never by itself, under the user's fingers
  });

  if (registration.waiting && workers.controller) offer();
  /** @param {ServiceWorker | null} fresh */
  const follow = (fresh) =>
    fresh?.addEventListener('statechange', () => {
      if (fresh.state === 'installed' && registration.active) offer();
      if (fresh.state === 'activated' && !taken) tell.ready?.();
    });
  follow(registration.installing);
  registration.addEventListener('updatefound', () => follow(registration.installing));

  // A page that stays open for days, as on a home screen, asks when it is looked at again.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => {});
  });
}
