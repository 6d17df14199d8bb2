// SPDX-License-Identifier: Apache-2.0
//
// Keeps the pages themselves, so that a reload in the middle of a bake works without a network.
// What the pages show comes from lib/keep.ts; nothing below /api/ is ever kept here.
const edition = 'EDITION';
const files = [/* FILES */];

self.addEventListener('install', (event) => {
    event.waitUntil(
        caches
            .open(edition)
            .then((cache) => cache.addAll(['/', '/elsewhere.html', ...files]))
            .then(() => self.skipWaiting()),
    );
});

self.addEventListener('activate', (event) => {
    event.waitUntil(
        caches
            .keys()
            .then((names) =>
                Promise.all(
                    names.filter((name) => name !== edition).map((name) => caches.delete(name)),
                ),
            )
            .then(() => self.clients.claim()),
    );
});

self.addEventListener('fetch', (event) => {
    const url = new URL(event.request.url);
    if (event.request.method !== 'GET' || url.origin !== self.location.origin) return;
    if (url.pathname.startsWith('/api/')) return;
    if (event.request.mode === 'navigate') {
        // Every path of the pages but the first is the same document; the newest one while there is a network.
        const path = url.pathname === '/' ? '/' : '/elsewhere.html';
        event.respondWith(fetch(event.request).catch(() => caches.match(path)));
    } else if (files.includes(url.pathname)) {
        event.respondWith(caches.match(url.pathname).then((kept) => kept ?? fetch(event.request)));
    }
});

// A tap on a notification brings the bake to the front.
self.addEventListener('notificationclick', (event) => {
    event.notification.close();
    const path = event.notification.data?.path ?? '/';
    event.waitUntil(
        self.clients.matchAll({ type: 'window' }).then((windows) => {
            const open = windows.find((window) => new URL(window.url).pathname === path);
            return open ? open.focus() : self.clients.openWindow(path);
        }),
    );
});
