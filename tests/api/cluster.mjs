// SPDX-License-Identifier: Apache-2.0
//
// A real PostgreSQL in a folder of its own, reached through a socket there, gone afterwards.
import { execFileSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const programs = ['/usr/lib/postgresql/15/bin', '/usr/local/pgsql/bin'].find((folder) => existsSync(join(folder, 'initdb')));

export class Cluster {
    static isThere() {
        return programs !== undefined;
    }

    constructor() {
        this.folder = mkdtempSync(join(tmpdir(), 'loaf-pg-'));
        if (process.geteuid() === 0) {
            const of = (flag) => Number(execFileSync('id', [flag, 'postgres']));
            chownSync(this.folder, of('-u'), of('-g'));
        }
        this.databases = 0;
        this.run('initdb', ['-D', 'data', '-U', 'app', '--auth=trust', '--no-sync', '-E', 'UTF8', '--locale=C.UTF-8']);
        // As in tests/store/cluster.cpp: a killed server loses nothing that the kernel has.
        const settings = `-c listen_addresses='' -c unix_socket_directories=${this.folder} -c fsync=off -c full_page_writes=off`;
        this.run('pg_ctl', ['-D', 'data', '-w', '-s', '-l', 'server.log', '-o', settings, 'start']);
    }

    // The server does not run as root.
    run(name, words) {
        const command = [join(programs, name), ...words];
        const whole = process.geteuid() === 0 ? ['runuser', '-u', 'postgres', '--', ...command] : command;
        return execFileSync(whole[0], whole.slice(1), { cwd: this.folder, stdio: ['ignore', 'pipe', 'inherit'] });
    }

    execute(database, statement) {
        this.run('psql', ['-h', this.folder, '-U', 'app', '-d', database, '-q', '-v', 'ON_ERROR_STOP=1', '-c', statement]);
    }

    /// The address of a new, empty database, and its name.
    make() {
        const name = `app${++this.databases}`;
        this.execute('postgres', `CREATE DATABASE ${name}`);
        return { name, address: `postgresql:///${name}?host=${this.folder}&user=app` };
    }

    stop() {
        this.run('pg_ctl', ['-D', 'data', '-m', 'immediate', '-s', 'stop']);
        rmSync(this.folder, { recursive: true, force: true });
    }
}
