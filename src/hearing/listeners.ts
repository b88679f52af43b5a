/** The listeners of one kind of event. One that throws spoils neither the others nor hearing itself. */
export class Listeners<Event> {
  readonly #listeners = new Set<(event: Event) => void>();

  /** @returns a function that takes the listener away again */
  add(listener: (event: Event) => void): () => void {
    // Wrapped, so that one function added twice is two listeners, each with its own way out.
    const own = (event: Event): void => listener(event);
    this.#listeners.add(own);
    return () => void this.#listeners.delete(own);
  }

  tell(event: Event): void {
    for (const listener of this.#listeners) {
      try {
        listener(event);
      } catch (error) {
        reportError(error);
      }
    }
  }
}
