// SPDX-License-Identifier: Apache-2.0
//
// Words shown for what the engine calls by a key.
import type { Attention, Band, Basis, Step, WindowState } from './api';
import { lengthWords } from './times';

const kinds: Record<string, string> = {
    prepare: 'get ready',
    weigh: 'weigh',
    mix: 'mix',
    knead: 'knead',
    fold: 'fold',
    knock_back: 'knock back',
    divide: 'divide',
    shape: 'shape',
    finish: 'finish',
    activate: 'wake the yeast',
    soak: 'soak',
    ferment: 'leaven or sponge',
    rise: 'first rise',
    rest: 'rest',
    prove: 'final prove',
    chill: 'chill',
    preheat: 'heat the oven',
    bake: 'bake',
    cook: 'cook',
    cool: 'cool',
    serve: 'eat',
    store: 'keep',
};

export const kindNames = Object.keys(kinds);

export function kindName(kind: string): string {
    return kinds[kind] ?? kind;
}

export const placeChoices = [
    { value: 'counter', words: 'on the worktop' },
    { value: 'warm', words: 'in a warm spot' },
    { value: 'fridge', words: 'in the fridge' },
];

const places: Record<string, string> = {
    counter: '',
    warm: 'in a warm spot',
    fridge: 'in the fridge',
    oven: '',
    hob: 'on the hob',
};

export const attentionWords: Record<Attention, string> = {
    hands: 'your hands',
    wait: 'dough alone',
    near: 'stay near',
    none: '',
};

const bases: Record<Basis, string> = {
    stated: 'from the recipe',
    computed: 'for your kitchen',
    assumed: 'our guess',
    learned: 'from your bakes',
    open: 'our guess until you answer',
};

export const windowWords: Record<WindowState, string> = {
    asleep: 'Asleep',
    away: 'Away',
    busy: 'Busy',
};

export const ovenTakenWords = 'Oven taken';

export function kindWords(step: Step): string {
    return [kinds[step.kind] ?? step.kind, places[step.place] ?? ''].filter(Boolean).join(' ');
}

export function basisWords(basis: Basis): string {
    return bases[basis];
}

export function minutesWords(step: Step): string {
    const minutes = step.minutes;
    if (!minutes) return '';
    if (minutes.low === minutes.high) return lengthWords(minutes.low);
    const short = minutes.high < 60;
    const low = short ? String(Math.round(minutes.low)) : lengthWords(minutes.low);
    return `${low} to ${lengthWords(minutes.high)}`;
}

export function heatWords(range: Step['temperature_c']): string {
    if (!range) return '';
    const whole = (value: number): string => String(Math.round(value));
    return whole(range.low) === whole(range.high)
        ? `${whole(range.low)} °C`
        : `${whole(range.low)} to ${whole(range.high)} °C`;
}

export function gramsWords(band: Band): string {
    const whole = (value: number): string =>
        String(value < 20 ? Math.round(value * 10) / 10 : Math.round(value));
    return band.low === band.high
        ? `${whole(band.likely)} g`
        : `${whole(band.low)} to ${whole(band.high)} g`;
}
