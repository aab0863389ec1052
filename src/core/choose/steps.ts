/** Long calculations come in steps, so that whoever runs them can do something else in between. */

/** Runs all steps at once. */
export function drained<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
