// SPDX-License-Identifier: Apache-2.0
import { hydrate, mount } from 'svelte';

import App from './App.svelte';
import './look.css';

const target = document.getElementById('app');
if (!target) throw new Error('the document has no #app');
// The document of the first path has its screen already, and perhaps words typed into it.
if (target.hasChildNodes()) hydrate(App, { target });
else mount(App, { target });
delete document.documentElement.dataset.begun;

// Where the page came safely (https, or this computer itself) it is kept for times without a network.
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
    addEventListener('load', () => {
        navigator.serviceWorker.register('/worker.js').catch(() => undefined);
    });
}
