// SPDX-License-Identifier: Apache-2.0
//
// What a baker can put right in a reading: the fields of the form, with the keys that the engine
// takes as corrections (docs/openapi.yaml, PlaceInText).
import type { Ingredient, Reading, Step } from './api';
import {
    gramsWords,
    heatWords,
    kindName,
    kindNames,
    kindWords,
    minutesWords,
    placeChoices,
} from './kinds';

export interface Choice {
    value: string;
    words: string;
}

export interface Field {
    key: string;
    label: string;
    /// As it stands; what is kept is what differs from it.
    value: string;
    /// To choose from; without them it is typed.
    choices?: Choice[];
    hint?: string;
}

const noStep: Choice = { value: 'none', words: 'no step' };
const kinds: Choice[] = kindNames.map((kind) => ({ value: kind, words: kindName(kind) }));

const heated = new Set(['oven', 'hob']);
const waits = new Set(['activate', 'soak', 'ferment', 'rise', 'rest', 'prove', 'chill']);

export function stepFields(step: Step): Field[] {
    const hot = heated.has(step.place);
    const fields: Field[] = [
        {
            key: `kind-at-${step.at}`,
            label: 'What is it?',
            value: step.kind,
            choices: [...kinds, noStep],
        },
        {
            key: `minutes-at-${step.at}`,
            label: 'How long?',
            value: minutesWords(step),
            hint: '45 minutes',
        },
    ];
    if (hot || waits.has(step.kind)) {
        fields.push({
            key: `heat-at-${step.at}`,
            label: hot ? 'How hot?' : 'How warm does it stand?',
            value: heatWords(step.temperature_c),
            hint: hot ? '220 °C or gas 7' : '24 °C',
        });
    }
    if (waits.has(step.kind)) {
        fields.push({
            key: `place-at-${step.at}`,
            label: 'Where?',
            value: step.place,
            choices: placeChoices,
        });
    }
    return fields;
}

export function amountFields(ingredient: Ingredient): Field[] {
    if (ingredient.at === '') return [];
    return [
        {
            key: `grams-at-${ingredient.at}`,
            label: 'How much?',
            value: ingredient.grams ? gramsWords(ingredient.grams) : '',
            hint: '500 g or 2 tsp',
        },
    ];
}

// What nobody takes for a step.
const never = new Set(['the title', 'mark-up, not words']);

export function unreadFields(unread: Reading['unread'][number]): Field[] {
    if (never.has(unread.why)) return [];
    return [
        {
            key: `kind-at-${unread.at}`,
            label: 'What is it?',
            value: 'none',
            choices: [noStep, ...kinds],
        },
        { key: `minutes-at-${unread.at}`, label: 'How long?', value: '', hint: '45 minutes' },
    ];
}

/// What was read before it was put right, in a few words; nothing while it stands as read.
export function readFirst(step: Step): string {
    const before = step.as_read;
    if (!before) return '';
    const as = { ...step, ...before };
    return [kindWords(as), minutesWords(as), heatWords(as.temperature_c)]
        .filter(Boolean)
        .join(', ');
}
