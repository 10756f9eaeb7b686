// Gives the page from the tablet's own memory, so that it opens without a network too. What is asked of the jobs goes to the server; the page
// itself keeps what it needs of them.

const version = "floor-{{version}}";
const files = ["/", ..."{{files}}".split(" ")];
const pictures = "floor-pictures";
const picture = /^\/api\/jobs\/[^/]+\/(figures|photos)\/[^/]+$/;

addEventListener("install", event => event.waitUntil(caches.open(version).then(cache => cache.addAll(files)).then(() => skipWaiting())));

addEventListener("activate", event => event.waitUntil(caches.keys()
  .then(names => Promise.all(names.filter(name => name.startsWith("floor-") && name !== version && name !== pictures).map(name => caches.delete(name))))
  .then(() => clients.claim())));

addEventListener("fetch", event => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin) {
    return;
  }

  if (picture.test(url.pathname)) {
    event.respondWith(kept(event.request));
  } else if (event.request.mode === "navigate" && !url.pathname.startsWith("/api/")) {
    // Every address that people see is the same page.
    event.respondWith(caches.match("/", { cacheName: version }).then(page => page ?? fetch(event.request)));
  } else if (!url.pathname.startsWith("/api/")) {
    event.respondWith(caches.match(event.request, { cacheName: version }).then(file => file ?? fetch(event.request)));
  }
});

/** A picture is called by what it holds: it never changes. */
async function kept(request) {
  const cache = await caches.open(pictures);
  const there = await cache.match(request);
  if (there) {
    return there;
  }

  const response = await fetch(request);
  if (response.ok) {
    await cache.put(request, response.clone());
  }

  return response;
}
