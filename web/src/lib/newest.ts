// SPDX-License-Identifier: Apache-2.0
//
// A finger moves faster than a plan is made. At most one question is on its way; of those that wait
// only the newest is asked, so that the answer on the screen is never far behind.

export interface Newest<Question> {
    ask(question: Question): void;
    /// Forgets what waits and lets no answer through any more.
    stop(): void;
}

/// Promises: `answered` and `failed` get answers in the order of their questions, the last question
///           always gets one, and never two calls of `answer` overlap.
export function newest<Question, Answer>(
    answer: (question: Question) => Promise<Answer>,
    answered: (answer: Answer, question: Question) => void,
    failed: (cause: unknown, question: Question) => void,
): Newest<Question> {
    let busy = false;
    let stopped = false;
    let waiting: { question: Question } | null = null;

    async function run(question: Question): Promise<void> {
        busy = true;
        let current: { question: Question } | null = { question };
        while (current && !stopped) {
            const asked: Question = current.question;
            try {
                const got = await answer(asked);
                if (!stopped) answered(got, asked);
            } catch (cause) {
                if (!stopped) failed(cause, asked);
            }
            current = waiting;
            waiting = null;
        }
        busy = false;
    }

    return {
        ask(question) {
            if (stopped) return;
            if (busy) waiting = { question };
            else void run(question);
        },
        stop() {
            stopped = true;
            waiting = null;
        },
    };
}
