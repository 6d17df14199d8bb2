// SPDX-License-Identifier: Apache-2.0
import { afterEach } from 'vitest';

afterEach(() => {
    document.body.replaceChildren();
});
