/**
 * The offline shell: keeps a copy of every file of the build and serves it, so that the app opens with no
 * signal from its second start on. It knows nothing of plans. A new version is fetched whole beside the old
 * one and waits; the page decides when to swap by sending { type: 'SKIP_WAITING' }, so no edit is lost.
 */
import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope & {
  /** Written by the build: each file of dist with its revision, null where the name carries a hash. */
  __WB_MANIFEST: { url: string; revision: string | null }[];
};

// First: an address that is a file of the build (their-side.html too) is that file; any other is the app.
precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')));

self.addEventListener('message', (event) => {
  const message: unknown = event.data;
  if (typeof message !== 'object' || message === null || !('type' in message)) return;
  if (message.type === 'SKIP_WAITING') void self.skipWaiting();
});
