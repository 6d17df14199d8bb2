// SPDX-License-Identifier: Apache-2.0
import { expect, it } from 'vitest';

import { newest } from '../src/lib/newest';

function slow() {
    const open: { question: number; answer: (value: string) => void; fail: () => void }[] = [];
    const got: string[] = [];
    const follower = newest(
        (question: number) =>
            new Promise<string>((answer, fail) => {
                open.push({ question, answer, fail: () => fail(new Error('no')) });
            }),
        (answer) => got.push(answer),
        () => got.push('failed'),
    );
    const settle = async (): Promise<void> => {
        await new Promise((resolve) => setTimeout(resolve, 0));
    };
    return { open, got, follower, settle };
}

it('asks one question at a time and of those that wait only the newest', async () => {
    const { open, got, follower, settle } = slow();
    for (const question of [1, 2, 3, 4]) follower.ask(question);
    expect(open.map((one) => one.question)).toEqual([1]);
    open[0]?.answer('one');
    await settle();
    expect(open.map((one) => one.question)).toEqual([1, 4]);
    open[1]?.answer('four');
    await settle();
    expect(got).toEqual(['one', 'four']);
});

it('goes on after a failure', async () => {
    const { open, got, follower, settle } = slow();
    follower.ask(1);
    follower.ask(2);
    open[0]?.fail();
    await settle();
    open[1]?.answer('two');
    await settle();
    follower.ask(3);
    open[2]?.answer('three');
    await settle();
    expect(got).toEqual(['failed', 'two', 'three']);
});

it('lets nothing through once it is stopped', async () => {
    const { open, got, follower, settle } = slow();
    follower.ask(1);
    follower.stop();
    open[0]?.answer('one');
    follower.ask(2);
    await settle();
    expect(got).toEqual([]);
    expect(open).toHaveLength(1);
});
