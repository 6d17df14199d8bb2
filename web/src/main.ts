// SPDX-License-Identifier: Apache-2.0
import { mount } from 'svelte';

import App from './App.svelte';
import './look.css';

const target = document.getElementById('app');
if (!target) throw new Error('index.html has no #app');
mount(App, { target });

// Where the page came safely (https, or this computer itself) it is kept for times without a network.
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
    addEventListener('load', () => {
        navigator.serviceWorker.register('/worker.js').catch(() => undefined);
    });
}
