// SPDX-License-Identifier: Apache-2.0
//
// A real Chromium on the real program. What the checks find is gathered, and told at the end.
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

import { Serving } from '../api/serving.mjs';

const root = new URL('../../', import.meta.url);
const need = createRequire(new URL('web/package.json', root));
const browserPath = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find((path) => existsSync(path));

export async function withServer(work) {
    const pages = new URL('web/dist', root).pathname;
    if (!browserPath || !existsSync(new URL('web/node_modules/playwright-core', root)) || !existsSync(pages)) {
        console.log('skipped: no chromium, or the pages and their packages are not there');
        process.exit(77);
    }
    const { chromium } = need('playwright-core');
    const serving = await Serving.start(process.argv[2], ['--listen', '127.0.0.1:0', '--pages', pages, '--quiet']);
    const browser = await chromium.launch({
        executablePath: browserPath,
        args: [
            '--no-sandbox',
            '--disable-gpu',
            '--disable-quic',
            '--no-first-run',
            '--disable-background-networking',
            '--disable-component-update',
            '--disable-sync',
        ],
    });
    let failed = 0;
    const check = (holds, what) => {
        if (!holds) failed += 1;
        console.log(`${holds ? 'ok' : 'FAILED'}: ${what}`);
    };
    try {
        await work({ browser, base: serving.base, check });
    } catch (fault) {
        failed += 1;
        console.log(`FAILED: ${fault.stack}`);
    } finally {
        await browser.close();
        await serving.stop();
    }
    process.exit(failed === 0 ? 0 : 1);
}

const axe = () => readFileSync(need.resolve('axe-core/axe.min.js'), 'utf8');

// Nothing that axe-core objects to, nothing that scrolls sideways.
export async function accessible(page, name, check) {
    await page.evaluate(axe());
    const found = await page.evaluate(async () => {
        const result = await globalThis.axe.run(document, { resultTypes: ['violations'] });
        return result.violations.map((one) => `${one.id} at ${one.nodes[0].target.join(' ')}`);
    });
    check(found.length === 0, `${name}: axe-core finds nothing${found.length ? `, but ${found.join('; ')}` : ''}`);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    check(sideways <= 0, `${name}: nothing scrolls sideways`);
}
