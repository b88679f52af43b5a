/** Waits for `work`, but not longer than `ms`: then rejects with `message`. The work itself is not stopped. */
export function within<T>(ms: number, work: Promise<T>, message: string): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(message)), ms);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
