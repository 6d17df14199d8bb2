// SPDX-License-Identifier: Apache-2.0
//
// docs/openapi.yaml is the contract. contract.ts is made from it (npm run types); what the pages
// believe, api.ts, must hold of it: the types below are compared by svelte-check.
import { existsSync, readFileSync } from 'node:fs';

import openapiTS, { astToString } from 'openapi-typescript';
import { expect, it } from 'vitest';

import type * as api from '../src/lib/api';
import type { components } from '../src/lib/contract';

type Contract = components['schemas'];

// What the server may answer is what the screens take …
export const answers = {
    reading: (answer: Contract['Reading']): api.Reading => answer,
    plan: (answer: Contract['PlanAnswer']): api.PlanOutcome => answer,
    state: (answer: Contract['BakeState']): api.BakeState => answer,
    notebook: (answer: Contract['Notebook']): api.Notebook => answer,
    faults: (answer: Contract['Faults']): { error: api.Diagnostic[] } => answer,
};
// … and what the screens send is what the server takes.
export const requests = {
    request: (sent: api.BakeRequest): Contract['BakeRequest'] => sent,
    event: (
        sent: Pick<api.BakeEvent, 'id' | 'at' | 'kind' | 'bread' | 'stage'>,
    ): Contract['Event'] => sent,
    recipe: (sent: Omit<api.KeptRecipe, 'id'>): Contract['Bread'] => sent,
};

const contract = new URL('../../docs/openapi.yaml', `file://${process.cwd()}/tests/`);

it.skipIf(!existsSync(contract))(
    'contract.ts is what openapi-typescript makes of the contract',
    async () => {
        const made = astToString(await openapiTS(contract));
        const kept = readFileSync('src/lib/contract.ts', 'utf8');
        // The program puts a comment in front.
        expect(kept.slice(kept.indexOf('export interface paths'))).toBe(
            made.slice(made.indexOf('export interface paths')),
        );
    },
);
