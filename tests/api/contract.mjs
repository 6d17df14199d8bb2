// SPDX-License-Identifier: Apache-2.0
//
// Holds the server to docs/openapi.yaml: node tests/api/contract.mjs PROGRAM
//
// Every address is asked for every answer that the contract names; status, content type and body are
// compared with it by Ajv (JSON Schema 2020-12). Schemas are closed first, so that a key which the
// contract does not know fails too. Exit status: 0 all well, 1 something differs, 77 the packages of web/
// are not there.
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

import { Serving } from './serving.mjs';

const root = new URL('../../', import.meta.url);
const packages = new URL('web/node_modules/', root);
if (!existsSync(packages)) {
    console.log('skipped: the packages of web/ are not installed (scripts/test-web installs them)');
    process.exit(77);
}
const load = createRequire(fileURLToPath(new URL('web/package.json', root)));
const Ajv = load('ajv/dist/2020').default;
const contract = load('yaml').parse(readFileSync(new URL('docs/openapi.yaml', root), 'utf8'));

// A schema that names properties means those and no others.
function close(schema) {
    if (Array.isArray(schema)) schema.forEach(close);
    if (schema === null || typeof schema !== 'object') return;
    if (schema.properties && schema.additionalProperties === undefined) schema.additionalProperties = false;
    Object.values(schema).forEach(close);
}
close(contract.components.schemas);
close(contract.paths);
close(contract.components.responses);

const ajv = new Ajv({ strict: false, allErrors: true });
// RFC 3339 section 5.6.
ajv.addFormat('date-time', /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/);
ajv.addFormat('binary', true);
ajv.addSchema(contract, 'contract');

// Told in the head of the contract and not at each address.
const everywhere = new Set(['400', '401', '403', '405', '413', '421', '431', '500']);
// Provoked elsewhere: a store that fails.
const elsewhere = (status) => status === '503';

const seen = new Set();
const faults = [];
const complain = (what) => faults.push(what);

const pointer = (...keys) => keys.map((key) => key.replaceAll('~', '~0').replaceAll('/', '~1')).join('/');

function operationOf(method, path) {
    for (const [template, item] of Object.entries(contract.paths)) {
        const pattern = new RegExp(`^${template.replace(/\{[^}]+\}/g, '[^/]+')}$`);
        if (pattern.test(path)) return { template, operation: item[method.toLowerCase()] };
    }
    return {};
}

// Where the schema of an answer stands in the contract; undefined where there is none.
function schemaOf(template, method, operation, status, type) {
    let place = `paths/${pointer(template, method.toLowerCase(), 'responses', status)}`;
    let response = operation?.responses[status];
    if (!response && everywhere.has(status)) response = { $ref: '#/components/responses/Refused' };
    if (response?.$ref) {
        place = response.$ref.slice(2);
        response = contract.components.responses[place.split('/').pop()];
    }
    const known = Object.keys(response?.content ?? {});
    if (!response) return { fault: `status ${status} is not in the contract` };
    if (known.length === 0) return {};
    if (!known.includes(type)) return { fault: `type ${type} is not in the contract` };
    return { place: `contract#/${place}/content/${pointer(type)}/schema` };
}

async function ask(serving, method, path, { body, headers = {}, expect } = {}) {
    const isJson = body !== undefined && !(body instanceof Uint8Array) && typeof body !== 'string';
    const answer = await fetch(serving.base + path, {
        method,
        headers: { ...(isJson ? { 'Content-Type': 'application/json' } : {}), ...headers },
        body: isJson ? JSON.stringify(body) : body,
        redirect: 'manual',
    });
    const bytes = Buffer.from(await answer.arrayBuffer());
    return check(method, path, answer, bytes, expect);
}

function check(method, path, answer, bytes, expect) {
    const status = String(answer.status);
    const here = `${method} ${path} -> ${status}`;
    if (expect !== undefined && answer.status !== expect) {
        complain(`${here}: expected ${expect}; ${bytes.toString('utf8').slice(0, 300)}`);
    }
    const type = (answer.headers.get('content-type') ?? '').split(';')[0];
    const { template, operation } = operationOf(method, path.split('?')[0]);
    if (template === undefined && status !== '404') complain(`${here}: the address is not in the contract`);
    if (operation) seen.add(`${method.toLowerCase()} ${template} ${status}`);
    if (template === undefined) return undefined;
    const { place, fault } = schemaOf(template, method, operation, status, type);
    if (fault) complain(`${here}: ${fault}`);
    for (const [header, wanted] of [['x-content-type-options', 'nosniff'], ['referrer-policy', 'no-referrer']]) {
        if (answer.headers.get(header) !== wanted) complain(`${here}: ${header} is missing`);
    }
    if (type !== 'application/json') return bytes;
    const json = JSON.parse(bytes.toString('utf8'));
    if (place && !ajv.validate({ $ref: place }, json)) {
        for (const error of ajv.errors.slice(0, 5)) {
            complain(`${here}: ${error.instancePath} ${error.message} ${JSON.stringify(error.params)}`);
        }
    }
    return json;
}

// The first events of a stream.
async function listen(serving, path, count, headers = {}) {
    const stop = new AbortController();
    const answer = await fetch(serving.base + path, { headers, signal: stop.signal });
    const events = [];
    let text = '';
    for await (const bytes of answer.body) {
        text += Buffer.from(bytes).toString('utf8');
        for (const block of text.split('\n\n').slice(0, -1)) {
            const lines = Object.fromEntries(block.split('\n').map((line) => line.split(/: (.*)/s).slice(0, 2)));
            if (lines.data && !events.some((event) => event.id === lines.id)) events.push(lines);
        }
        if (events.length >= count) break;
    }
    stop.abort();
    check('GET', path, answer, Buffer.alloc(0), 200);
    for (const event of events) {
        if (event.event !== 'event') complain(`stream: found event '${event.event}'`);
        if (!ajv.validate({ $ref: 'contract#/components/schemas/Event' }, JSON.parse(event.data))) {
            complain(`stream: ${JSON.stringify(ajv.errors)}`);
        }
    }
    return events;
}

const text = readFileSync(new URL('examples/first-loaf.md', root), 'utf8');
const rolls = readFileSync(new URL('examples/rolls.md', root), 'utf8');
const day = {
    zone: 'Europe/London',
    people: ['you'],
    windows: [{ person: 'you', state: 'asleep', from: '22:30', to: '06:30' }],
    oven_claims: [{ from: '12:00', to: '12:30', temperature_c: 180 }],
};
const kitchen = { room_c: 19, oven: { max_c: 240, fan: true }, tins: [{ name: '2 lb', length_mm: 210, width_mm: 110, height_mm: 70 }] };
const bread = { name: 'the hall loaf', text, answers: [{ key: 'room-c', value: '20' }] };
const soda = 'Soda bread\n\nMix 450 g plain flour, 1 tsp bicarbonate of soda, 1 tsp salt and 350 ml buttermilk. Bake for 40 minutes at 200°C.';
const request = { version: 1, breads: [bread], kitchen, day, eat_by: 'sat 18:00', now: '2026-11-28T08:00:00Z' };
const soon = { ...request, eat_by: '2026-11-28 09:00' };
const png = Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex');

function event(id, more) {
    return { id, at: '2026-11-28T13:10:00Z', kind: 'done', bread: 0, stage: 1, ...more };
}

// Until it is over.
async function lookedAt(it, id) {
    for (;;) {
        const now = await ask(it, 'GET', `/api/v1/intake/${id}`);
        if (!now.intake || now.intake.taken) return now;
        await new Promise((resolve) => setTimeout(resolve, 50));
    }
}

async function intake(it) {
    const headers = { 'Content-Type': 'application/octet-stream' };
    const begin = async (body, query = '') =>
        (await ask(it, 'POST', `/api/v1/intake${query}`, { body, headers, expect: 202 })).intake.id;
    const saved = '<!doctype html><title>Loaf</title><article><h1>Loaf</h1><p>Mix 500 g flour with 320 g water.</p><p>Bake for 35 minutes.</p></article>';
    const page = await lookedAt(it, await begin(saved));
    if (!page.intake?.taken?.text.includes('35 minutes')) complain(`intake: the page's words are not there: ${JSON.stringify(page)}`);
    // A page of ours as a picture: print, and plenty of figures.
    const picture = await ask(it, 'POST', '/api/v1/page', { body: { request, form: 'png' }, expect: 200 });
    const id = await begin(Buffer.concat([picture, picture]), `?sizes=${picture.length},${picture.length}`);
    const read = await lookedAt(it, id);
    if (!read.intake?.taken?.text.includes('bake') || read.intake.taken.pages.length !== 2) complain(`intake: the picture was not read: ${JSON.stringify(read).slice(0, 500)}`);
    await ask(it, 'GET', `/api/v1/intake/${id}/pages/0`, { expect: 200 });
    await ask(it, 'GET', `/api/v1/intake/${id}/pages/2`, { expect: 404 });
    await ask(it, 'DELETE', `/api/v1/intake/${id}`, { expect: 200 });
    await ask(it, 'DELETE', `/api/v1/intake/${id}`, { expect: 404 });
    await ask(it, 'GET', `/api/v1/intake/${id}`, { expect: 404 });
    await ask(it, 'POST', '/api/v1/intake?sizes=3,9', { body: 'four', headers, expect: 400 });

    // What means no good costs a process of its own, and the server nothing.
    const hostile = {
        'a picture that ends at once': Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'),
        'a header of 50,000 by 50,000': Buffer.from('89504e470d0a1a0a0000000d494844520000c3500000c350080200000000000000', 'hex'),
        'a PDF that ends at once': '%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 1 0 R >>\nendobj\ntrailer << /Root 1 0 R >>\n',
        'tags in tags': `<html>${'<div>'.repeat(200_000)}`,
        'bytes of nothing': Buffer.from('00ff00ff00ff', 'hex'),
    };
    for (const [name, body] of Object.entries(hostile)) {
        const said = await lookedAt(it, await begin(body));
        if (!said.error?.[0]?.do_this) complain(`intake: ${name}: ${JSON.stringify(said).slice(0, 300)}`);
        await ask(it, 'GET', '/healthz', { expect: 200 });
    }
}

async function withoutToken(program) {
    const it = await Serving.start(program);
    await ask(it, 'GET', '/healthz', { expect: 200 });
    await ask(it, 'GET', '/metrics', { expect: 200 });
    await ask(it, 'GET', '/enter?token=old', { expect: 303 });

    await ask(it, 'POST', '/api/v1/read', { body: bread, expect: 200 });
    await ask(it, 'POST', '/api/v1/read', { body: { name: 'rolls', text: rolls }, expect: 200 });
    await ask(it, 'POST', '/api/v1/read', { body: { name: 'no words', text: '' }, expect: 400 });
    const plan = await ask(it, 'POST', '/api/v1/plan', { body: request, expect: 200 });
    if (!plan.plan?.stages?.length) complain('plan: found no stages');
    await ask(it, 'POST', '/api/v1/plan', {
        body: { ...request, breads: [bread, { name: 'rolls', text: rolls }], eat_by: 'sat 20:00' },
        expect: 200,
    });
    const twice = await ask(it, 'POST', '/api/v1/plan', {
        body: { ...request, breads: [{ ...bread, size: { factor: 2 }, yeast: 'fresh' }] },
        expect: 200,
    });
    if (!twice.sheets[0].notes.some((note) => note.startsWith('2 times the recipe'))) complain('plan: the page does not tell its size');
    if (!twice.sheets[0].weigh.some((line) => line.includes('fresh yeast'))) complain('plan: the other yeast is not weighed');
    const begun = await ask(it, 'POST', '/api/v1/plan', {
        body: { ...request, breads: [{ ...bread, yeast: 'leaven' }], eat_by: '2026-11-29 21:30' },
        expect: 200,
    });
    if (!begun.plan.stages.some((stage) => stage.title.includes('eaven') && stage.basis === 'computed')) complain('plan: no leaven ripens');
    const sizes = [
        { pieces: 2, factor: 2 }, { pieces: 0 }, { tin_mm: { length: 230, width: 130 } }, { weight: 3 },
    ];
    for (const size of sizes) {
        await ask(it, 'POST', '/api/v1/plan', { body: { ...request, breads: [{ ...bread, size }] }, expect: 400 });
    }
    await ask(it, 'POST', '/api/v1/plan', { body: { ...request, breads: [{ ...bread, yeast: 'barm' }] }, expect: 400 });
    const tin = { tin_mm: { length: 230, width: 130, height: 70 } };
    const heavy = async (size) =>
        (await ask(it, 'POST', '/api/v1/gather', { body: { ...request, breads: [{ ...bread, size }] }, expect: 200 }))
            .provisions.buy.reduce((sum, one) => sum + (one.grams?.likely ?? 0), 0);
    if ((await heavy(tin)) === (await heavy(undefined))) complain('gather: a tin weighs as the recipe does');
    await ask(it, 'POST', '/api/v1/read', { body: { text: soda, yeast: 'instant' }, expect: 422 });
    const never = await ask(it, 'POST', '/api/v1/plan', { body: soon, expect: 200 });
    if (!never.impossible?.reasons?.length) complain('plan: an impossible day was planned');
    await ask(it, 'POST', '/api/v1/gather', { body: request, expect: 200 });
    await ask(it, 'POST', '/api/v1/gather', { body: '{"breads":', expect: 400 });
    await ask(it, 'POST', '/api/v1/gather', { body: { breads: [{ text: 'hello there' }] }, expect: 422 });
    await ask(it, 'POST', '/api/v1/formula', { body: request.breads[0], expect: 200 });
    await ask(it, 'POST', '/api/v1/formula', { body: '{"text":', expect: 400 });
    await ask(it, 'POST', '/api/v1/formula', { body: { text: 'hello there' }, expect: 422 });
    await ask(it, 'POST', '/api/v1/choose', { body: request, expect: 200 });
    await ask(it, 'POST', '/api/v1/choose', { body: '{"breads":', expect: 400 });
    await ask(it, 'POST', '/api/v1/choose', { body: { breads: [{ text: 'hello there' }] }, expect: 422 });
    await ask(it, 'POST', '/api/v1/plan', { body: '{"breads":', expect: 400 });
    await ask(it, 'POST', '/api/v1/plan', { body: { breads: [{ text: 'hello there' }] }, expect: 422 });
    for (const form of ['pdf', 'svg', 'png', 'ics', 'txt']) {
        await ask(it, 'POST', '/api/v1/page', { body: { request, form, paper: 'letter', large_print: true }, expect: 200 });
    }
    await ask(it, 'POST', '/api/v1/page', { body: { request, form: 'doc' }, expect: 400 });
    await ask(it, 'POST', '/api/v1/page', { body: { request: soon }, expect: 422 });

    const recipe = '/api/v1/recipes/hall';
    await ask(it, 'GET', '/api/v1/notebook', { expect: 200 });
    await ask(it, 'PUT', recipe, { body: bread, expect: 200 });
    await ask(it, 'PUT', recipe, { body: { name: 'nothing' }, expect: 400 });
    await ask(it, 'PUT', '/api/v1/recipes/a%20b', { body: bread, expect: 404 });
    await ask(it, 'PUT', '/api/v1/settings', { body: { kitchen, day }, expect: 200 });
    await ask(it, 'PUT', '/api/v1/settings', { body: { kitchen: { room_c: 900 } }, expect: 400 });
    const notebook = await ask(it, 'GET', '/api/v1/notebook', { expect: 200 });
    if (!notebook.recipes.some((kept) => kept.id === 'hall' && kept.text === text)) complain('notebook: the recipe is not as it was sent');

    const bake = '/api/v1/bakes/saturday-1';
    await ask(it, 'POST', '/api/v1/bakes', { body: { id: 'saturday-1', request }, expect: 201 });
    await ask(it, 'POST', '/api/v1/bakes', { body: { id: 'saturday-1', request }, expect: 200 });
    await ask(it, 'POST', '/api/v1/bakes', { body: { id: 'a b', request }, expect: 400 });
    await ask(it, 'POST', '/api/v1/bakes', { body: { id: 'soon', request: soon }, expect: 422 });
    const first = [
        event('e1', { kind: 'begun' }),
        event('e2'),
        event('e3', { kind: 'act_done', stage: 4, act: 0 }),
        event('e4', { kind: 'grown', stage: 2, how: 'half_as_much' }),
        event('e5', { kind: 'note', text: 'sticky “rye”\n½' }),
        event('e6', { kind: 'temperature', of: 'dough', c: 24 }),
        event('e7', { kind: 'trouble', what: 'going_out', until: '2026-11-28T14:30:00Z' }),
        event('e8', { kind: 'not_ready', stage: 2, until: '2026-11-28T14:40:00Z' }),
        event('e9', { kind: 'taken_back', undoes: 'e8' }),
    ];
    const told = await ask(it, 'POST', `${bake}/events`, { body: { events: first }, expect: 200 });
    if (told.sequences.join() !== '1,2,3,4,5,6,7,8,9') complain(`events: found the numbers ${told.sequences}`);
    const again = await ask(it, 'POST', `${bake}/events`, { body: { events: [first[2], event('e10', { stage: 2 })] }, expect: 200 });
    if (again.sequences.join() !== '3,10') complain(`events: a retry has the number ${again.sequences}`);
    await ask(it, 'POST', `${bake}/events`, { body: { events: [{ id: 'x' }] }, expect: 400 });
    await ask(it, 'POST', '/api/v1/bakes/none/events', { body: { events: [event('y')] }, expect: 404 });
    await ask(it, 'GET', `${bake}/state?now=2026-11-28T14:00:00Z`, { expect: 200 });
    await ask(it, 'GET', `${bake}/state`, { expect: 200 });
    await ask(it, 'GET', `${bake}/state?now=later`, { expect: 400 });
    await ask(it, 'GET', '/api/v1/bakes/none/state', { expect: 404 });
    await ask(it, 'GET', '/api/v1/bakes', { expect: 200 });
    const kept = await ask(it, 'GET', bake, { expect: 200 });
    if (kept.events.length !== 10 || kept.last !== 10) complain('a bake does not hold its ten events');
    await ask(it, 'GET', '/api/v1/bakes/none', { expect: 404 });
    const all = await listen(it, `${bake}/stream`, 10);
    if (all.map(({ id }) => id).join() !== '1,2,3,4,5,6,7,8,9,10') complain(`stream: found ${all.map(({ id }) => id)}`);
    const rest = await listen(it, `${bake}/stream`, 2, { 'Last-Event-ID': '8' });
    if (rest.map(({ id }) => id).join() !== '9,10') complain(`stream: after 8 found ${rest.map(({ id }) => id)}`);
    await ask(it, 'GET', '/api/v1/bakes/none/stream', { expect: 404 });
    for (const form of ['pdf', 'svg', 'png', 'ics', 'txt']) await ask(it, 'GET', `${bake}/page?form=${form}`, { expect: 200 });
    await ask(it, 'GET', `${bake}/page?form=doc`, { expect: 400 });
    await ask(it, 'GET', '/api/v1/bakes/none/page?form=txt', { expect: 404 });

    await ask(it, 'POST', `${bake}/events`, {
        body: { events: [event('e11', { kind: 'told', crust: 'pale', crumb: 'close', again: true, symptoms: ['a burst side'] })] },
        expect: 200,
    });
    const findings = await ask(it, 'GET', `${bake}/findings`, { expect: 200 });
    if (!findings.seen.includes('a burst side') || !findings.try_next) complain('findings: the sign that was told is not behind them');
    await ask(it, 'GET', `${bake}/findings?bread=0`, { expect: 200 });
    const progress = await ask(it, 'GET', '/api/v1/progress', { expect: 200 });
    if (!progress.breads.some((one) => one.bakes.some((point) => point.crust === 'pale'))) complain('progress: the pale crust is not in it');
    await ask(it, 'GET', `${bake}/findings?bread=7`, { expect: 400 });
    await ask(it, 'GET', '/api/v1/bakes/none/findings', { expect: 404 });

    const photo = await ask(it, 'POST', '/api/v1/photos', { body: png, headers: { 'Content-Type': 'image/png' }, expect: 201 });
    const bytes = await ask(it, 'GET', `/api/v1/photos/${photo.photo}`, { expect: 200 });
    if (!png.equals(bytes)) complain('photos: the bytes are not those that were sent');
    await ask(it, 'GET', '/api/v1/photos/none', { expect: 404 });
    await ask(it, 'POST', '/api/v1/photos', { body: 'words', expect: 415 });

    await intake(it);

    const everything = await ask(it, 'GET', '/api/v1/export', { expect: 200 });
    const other = await Serving.start(program);
    const added = await ask(other, 'POST', '/api/v1/import', { body: everything, expect: 200 });
    if (added.events !== 11 || added.photos !== 1) complain(`import: added ${JSON.stringify(added)}`);
    await ask(other, 'POST', '/api/v1/import', { body: { loafwright_export: 2 }, expect: 400 });
    await other.stop();
    await ask(it, 'DELETE', recipe, { expect: 200 });
    await ask(it, 'DELETE', recipe, { expect: 404 });
    await ask(it, 'GET', '/api/v1/help', { expect: 200 });
    await ask(it, 'GET', '/api/v1/code?address=http://192.0.2.7:8424/', { expect: 200 });
    await ask(it, 'GET', '/api/v1/code?address=kitchen', { expect: 400 });

    // What holds everywhere.
    await ask(it, 'GET', '/api/v1/none', { expect: 404 });
    await ask(it, 'OPTIONS', '/api/v1/plan', { expect: 405 });
    await ask(it, 'POST', '/api/v1/plan', { body: 'x'.repeat(2_000_000), expect: 413 });
    await ask(it, 'POST', '/api/v1/plan', { body: request, headers: { Origin: 'http://elsewhere.example' }, expect: 403 });
    await ask(it, 'POST', '/api/v1/plan', { body: request, headers: { 'Sec-Fetch-Site': 'cross-site' }, expect: 403 });
    await ask(it, 'GET', '/api/v1/help', { headers: { 'X-Long': 'a'.repeat(20_000) }, expect: 431 });
    // Copying or printing what is nested this deeply would take the whole stack.
    const deep = `{"id":"deep","request":{"breads":${'['.repeat(300_000)}${']'.repeat(300_000)}}}`;
    for (const path of ['/api/v1/bakes', '/api/v1/page', '/api/v1/plan', '/api/v1/read', '/api/v1/settings', '/api/v1/import']) {
        await ask(it, path === '/api/v1/settings' ? 'PUT' : 'POST', path, { body: deep, expect: 400 });
    }
    const end = await it.stop();
    if (end.code !== 0) complain(`it ended with ${JSON.stringify(end)}: ${it.log.slice(-500)}`);
    for (const line of it.log.trim().split('\n')) {
        const told = JSON.parse(line);
        if (typeof told.status === 'number' && /hall|rye|token/.test(line)) complain(`the log tells too much: ${line}`);
    }
}

async function withToken(program) {
    const it = await Serving.start(program, ['--listen', '0.0.0.0:0']);
    const token = new URL(it.address).searchParams.get('token');
    it.base = `http://127.0.0.1:${new URL(it.address).port}`;
    await ask(it, 'GET', '/healthz', { expect: 200 });
    await ask(it, 'GET', '/api/v1/help', { expect: 401 });
    await ask(it, 'GET', '/metrics', { headers: { Authorization: `Bearer ${token}` }, expect: 200 });
    const entered = await fetch(`${it.base}/enter?token=${token}`, { redirect: 'manual' });
    const cookie = entered.headers.get('set-cookie') ?? '';
    for (const part of ['HttpOnly', 'SameSite=Strict', 'Path=/']) {
        if (!cookie.includes(part)) complain(`the cookie lacks ${part}`);
    }
    if (entered.headers.get('location') !== '/') complain('the token stays in the address');
    await ask(it, 'GET', '/api/v1/help', { headers: { Cookie: cookie.split(';')[0] }, expect: 200 });
    const onward = await fetch(`${it.base}/enter?token=${token}&to=/bake/one`, { redirect: 'manual' });
    if (onward.headers.get('location') !== '/bake/one') complain('the way in does not lead on');
    for (let n = 0; n < 10; ++n) await ask(it, 'GET', `/enter?token=${'x'.repeat(43)}`, { expect: 401 });
    await ask(it, 'GET', '/enter?token=x', { expect: 429 });
    await it.stop();
}

await withoutToken(process.argv[2]);
await withToken(process.argv[2]);
for (const [template, item] of Object.entries(contract.paths)) {
    for (const method of ['get', 'post', 'put', 'delete']) {
        for (const status of Object.keys(item[method]?.responses ?? {})) {
            if (!elsewhere(status) && !seen.has(`${method} ${template} ${status}`)) complain(`never seen: ${method} ${template} ${status}`);
        }
    }
}
for (const fault of faults) console.log(fault);
console.log(`${seen.size} answers of the contract seen, ${faults.length} differences`);
process.exit(faults.length === 0 ? 0 : 1);
