/** A running worker and how one question is put to it. */
export interface OpenedWorker<Question, Answer> {
  readonly worker: Worker;
  readonly compute: (question: Question) => Promise<Answer>;
}

export interface NewestQuestion<Question, Answer> {
  /** Computes in the worker; null when a newer question or a stop has taken its place. */
  readonly ask: (question: Question) => Promise<Answer | null>;
  /** Ends what is being computed; the next question starts a fresh worker. */
  readonly stop: () => void;
}

interface Asked<Question, Answer> {
  readonly question: Question;
  readonly settle: (answer: Answer | null) => void;
  readonly fail: (cause: unknown) => void;
}

/** One worker, opened at its first question, that answers one at a time; of those that wait only the newest is kept. */
export const askNewestOnly = <Question, Answer>(
  open: () => OpenedWorker<Question, Answer>,
): NewestQuestion<Question, Answer> => {
  let opened: OpenedWorker<Question, Answer> | null = null;
  let running: Asked<Question, Answer> | null = null;
  let waiting: Asked<Question, Answer> | null = null;

  const run = async (asked: Asked<Question, Answer>): Promise<void> => {
    running = asked;
    opened ??= open();
    try {
      const answer = await opened.compute(asked.question);
      asked.settle(running === asked ? answer : null);
    } catch (cause) {
      asked.fail(cause);
    }
    if (running !== asked) return;
    running = null;
    const next = waiting;
    waiting = null;
    if (next !== null) void run(next);
  };

  return {
    ask: (question) =>
      new Promise((settle, fail) => {
        const asked = { question, settle, fail };
        if (running === null) {
          void run(asked);
          return;
        }
        waiting?.settle(null);
        waiting = asked;
      }),
    stop: () => {
      opened?.worker.terminate();
      opened = null;
      running?.settle(null);
      waiting?.settle(null);
      running = null;
      waiting = null;
    },
  };
};
