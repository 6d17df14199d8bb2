// SPDX-License-Identifier: Apache-2.0
import { mount } from 'svelte';

import App from './App.svelte';
import './look.css';

const target = document.getElementById('app');
if (!target) throw new Error('index.html has no #app');
mount(App, { target });
