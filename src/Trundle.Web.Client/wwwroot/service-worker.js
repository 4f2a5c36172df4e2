// Opens the bay's pages with no network, from the files that known.js keeps. While the host answers, it always has the first word; what is sent to the
// host and what it tells of visits never passes here.

addEventListener("install", () => skipWaiting());
addEventListener("activate", event => event.waitUntil(clients.claim()));

addEventListener("fetch", event => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin) {
    return;
  }

  if (request.mode === "navigate") {
    if (address.pathname.startsWith("/bay/")) {
      // One page stands for all of the bay's: it reads its address itself.
      event.respondWith(fetch(request).catch(async () => await caches.match("/bay/") ?? Response.error()));
    }

    return;
  }

  if (/^\/(_framework|_content|css|js|fonts|texts)\//.test(address.pathname)) {
    event.respondWith(fetch(request).catch(async () => await caches.match(request, { ignoreVary: true }) ?? Response.error()));
  }
});
