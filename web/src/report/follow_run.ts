// One run followed wherever it appears: in the list of runs, in the curves, in the rows.
//
// Everything that belongs to a run carries data-run. Pointing at it marks the run everywhere for
// the moment; the buttons in the list of runs mark it until they are pressed again. Pictures that
// are drawn anew get the marks that are held.

const marked = "marked-run";

function runAt(target: EventTarget | null): string | undefined {
  const element = target instanceof Element ? target.closest("[data-run]") : null;
  return element?.getAttribute("data-run") ?? undefined;
}

export class FollowedRuns {
  readonly #held = new Set<string>();
  #pointed: string | undefined;

  /** Marks what belongs to followed runs in a picture that was just drawn. */
  markIn(drawn: Element): void {
    for (const key of [...this.#held, this.#pointed]) {
      if (key !== undefined) this.#show(key, drawn);
    }
  }

  /** Follows a run that is not followed, and the other way round; whether it is followed now. */
  press(key: string): boolean {
    if (!this.#held.delete(key)) this.#held.add(key);
    this.#show(key, document);
    return this.#held.has(key);
  }

  point(key: string | undefined): void {
    if (key === this.#pointed) return;
    const before = this.#pointed;
    this.#pointed = key;
    for (const changed of [before, key]) if (changed !== undefined) this.#show(changed, document);
  }

  #show(key: string, within: Element | Document): void {
    const on = this.#held.has(key) || this.#pointed === key;
    for (const element of within.querySelectorAll(`[data-run="${CSS.escape(key)}"]`)) {
      element.classList.toggle(marked, on);
    }
  }
}

/** Makes the names in the list of runs into buttons, and listens for what is pointed at. */
export function followRuns(root: HTMLElement, followed: FollowedRuns): void {
  root.addEventListener("pointerover", (event) => followed.point(runAt(event.target)));
  root.addEventListener("pointerleave", () => followed.point(undefined));
  for (const name of root.querySelectorAll<HTMLElement>("tr[data-run] th[scope=row]")) {
    const key = runAt(name);
    if (key === undefined) continue;
    const button = document.createElement("button");
    button.type = "button";
    button.className = "follow";
    button.textContent = name.textContent;
    button.title = "Mark this run in every picture";
    button.setAttribute("aria-pressed", "false");
    button.addEventListener("click", () => {
      button.setAttribute("aria-pressed", String(followed.press(key)));
    });
    name.replaceChildren(button);
  }
}
