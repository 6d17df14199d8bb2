// SPDX-License-Identifier: Apache-2.0
//
// The built program serving on a free port, with a folder of its own that is gone afterwards, or one that
// the caller has and keeps; what is kept stands in that folder, or where `data` says.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export class Serving {
    static async start(program, words = ['--listen', '127.0.0.1:0'], kept = undefined, data = undefined) {
        const serving = new Serving();
        serving.own = kept === undefined;
        serving.folder = kept ?? mkdtempSync(join(tmpdir(), 'loafwright-api-'));
        serving.child = spawn(program, ['serve', '--data', data ?? join(serving.folder, 'data'), ...words], {
            env: { ...process.env, TZ: 'UTC', XDG_DATA_HOME: serving.folder },
            stdio: ['ignore', 'pipe', 'pipe'],
        });
        serving.log = '';
        serving.child.stderr.on('data', (bytes) => (serving.log += bytes));
        serving.ended = new Promise((resolve) => serving.child.on('exit', (code, signal) => resolve({ code, signal })));
        let said = '';
        serving.address = await new Promise((resolve, reject) => {
            serving.child.stdout.on('data', (bytes) => {
                said += bytes;
                const found = said.match(/http:\S+/);
                if (found) resolve(found[0]);
            });
            serving.ended.then(() => reject(new Error(`it did not serve: ${said}${serving.log}`)));
        });
        serving.base = new URL(serving.address).origin;
        return serving;
    }

    async stop() {
        this.child.kill('SIGTERM');
        const end = await this.ended;
        if (this.own) rmSync(this.folder, { recursive: true, force: true });
        return end;
    }
}
