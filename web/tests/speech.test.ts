// SPDX-License-Identifier: Apache-2.0
import { expect, it } from 'vitest';

import { commandIn } from '../src/lib/speech';

it.each([
    ['next', 'next'],
    ['What now?', 'next'],
    ['I am done', 'done'],
    ["It's ready", 'done'],
    ['how long', 'how_long'],
    ['How much time is left', 'how_long'],
    ['not yet', 'not_yet'],
    ["it's not ready", 'not_yet'],
    ["I'm not done", null],
    ["that isn't done", null],
    ['say it again', 'again'],
    ['the oven smells good', null],
    ['', null],
])('hears in "%s" the command %s', (heard, meant) => {
    expect(commandIn(heard)).toBe(meant);
});
