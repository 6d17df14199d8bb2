// SPDX-License-Identifier: Apache-2.0
//
// A real Chromium on the real program. What the checks find is gathered, and told at the end.
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';

import { Serving } from '../api/serving.mjs';

const root = new URL('../../', import.meta.url);
export const need = createRequire(new URL('web/package.json', root));
const browserPath = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find((path) => existsSync(path));

/// The program to ask is the first argument of the file that calls this.
///
/// Promises: `work` gets the browser, the address of a server with an empty folder, `check` and `person`; what
///           any page complained of (a fault of its own, its Content-Security-Policy) fails as well. Ends the
///           process: 0 all held, 1 something did not, 77 no browser, or the pages are not built.
export async function journey(work, { also = [], listen = '127.0.0.1:0' } = {}) {
    const pages = new URL('web/dist', root).pathname;
    if (!browserPath || !existsSync(new URL('web/node_modules/playwright-core', root)) || !existsSync(pages)) {
        console.log('skipped: no chromium, or the pages and their packages are not there');
        process.exit(77);
    }
    const { chromium } = need('playwright-core');
    const serving = await Serving.start(process.argv[2], ['--listen', listen, '--pages', pages, '--quiet']);
    const browser = await chromium.launch({
        executablePath: browserPath,
        env: { ...process.env, LANGUAGE: 'en_GB' },
        args: [
            '--no-sandbox',
            '--disable-gpu',
            '--disable-quic',
            '--no-first-run',
            '--disable-background-networking',
            '--disable-component-update',
            '--disable-sync',
            ...also,
        ],
    });
    let failed = 0;
    const check = (holds, what) => {
        if (!holds) failed += 1;
        console.log(`${holds ? 'ok' : 'FAILED'}: ${what}`);
    };
    const faults = [];
    const person = (wishes = {}) => opened(browser, serving.base, faults, wishes);
    try {
        await work({ browser, base: serving.base, address: serving.address, check, person });
        check(faults.length === 0, `no page complains${faults.length ? `: ${faults.join(' | ')}` : ''}`);
    } catch (fault) {
        failed += 1;
        console.log(`FAILED: ${fault.stack}`);
        await pictureOfAll(browser);
    } finally {
        await browser.close();
        await serving.stop();
    }
    process.exit(failed === 0 ? 0 : 1);
}

// What stood on each screen when a journey ended early.
async function pictureOfAll(browser) {
    const folder = process.env.LOAFWRIGHT_PICTURES;
    if (!folder) return;
    const pages = browser.contexts().flatMap((context) => context.pages());
    for (const [index, page] of pages.entries()) {
        await page.screenshot({ path: `${folder}/failed-${index}.png` }).catch(() => undefined);
    }
}

// One person with one screen: a page of its own context. `at` gives the page a clock of its own, which runs on
// from there. A call fills the screen until it is seen; unless `calls`, it is seen at once.
async function opened(browser, base, faults, { at, calls = false, width = 360, height = 740, ...others }) {
    const context = await browser.newContext({
        baseURL: base,
        viewport: { width, height },
        timezoneId: 'Europe/London',
        locale: 'en-GB',
        ...others,
    });
    context.setDefaultTimeout(20_000);
    const page = await context.newPage();
    page.on('pageerror', (fault) => faults.push(String(fault)));
    page.on('console', (message) => {
        if (/Content Security Policy/.test(message.text())) faults.push(message.text());
    });
    if (!calls) {
        const seen = page.getByRole('button', { name: 'Seen', exact: true });
        await page.addLocatorHandler(page.getByRole('alertdialog'), () => seen.click());
    }
    if (at) await page.clock.install({ time: at });
    return page;
}
