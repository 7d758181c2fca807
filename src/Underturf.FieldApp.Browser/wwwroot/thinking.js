// The page's side of the worker. A runtime computes on one thread, so the worker hears nothing while it thinks: to give a
// question up is to end the worker. Another is got ready at once for the question after it. The first waits for the first
// question: until the page can be used, it has the device to itself.

const gaveUp = {};
let worker = null;
let question = null;

/** A worker that starts its runtime now, and promises when it is ready. */
function hire() {
  const made = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
  made.ready = new Promise((resolve) => {
    made.addEventListener("message", ({ data }) => data.ready && resolve(), { once: true });
  });
  made.addEventListener("message", ({ data }) => made === worker && hear(data));
  made.addEventListener("error", (event) => made === worker && fail(event.message || "the worker could not start"));
  return made;
}

function hear(said) {
  if (said.share !== undefined) {
    question?.told(said.share);
  } else if (said.failed !== undefined) {
    fail(said.failed);
  } else if (said.answer) {
    settle(said);
  }
}

/** What a worker failed at may have left it broken; the next question gets a new one. */
function fail(failed) {
  worker.terminate();
  worker = null;
  settle({ failed });
}

function settle(answer) {
  const asked = question;
  question = null;
  asked?.resolve(answer);
}

/** Has the worker do a task with a log; whatever it does for another question is given up. */
export function ask(number, task, log, about, told) {
  giveUp(question?.number);
  return new Promise((resolve) => {
    question = { number, told, resolve };
    const asked = (worker ??= hire());
    asked.ready.then(() => asked === worker && question?.number === number && asked.postMessage({ task, log, about }, [log.buffer]));
  });
}

export function giveUp(number) {
  if (question !== null && question.number === number) {
    worker.terminate();
    worker = hire();
    settle(gaveUp);
  }
}
