// One run followed wherever it appears: in the list of runs, in the curves, in the rows.
//
// Everything that belongs to a run carries data-run. Pointing at it marks the run everywhere for
// the moment; the buttons in the list of runs mark it until they are pressed again.

const marked = "marked-run";

function everywhere(key: string): NodeListOf<Element> {
  return document.querySelectorAll(`[data-run="${CSS.escape(key)}"]`);
}

function runAt(target: EventTarget | null): string | undefined {
  const element = target instanceof Element ? target.closest("[data-run]") : null;
  return element?.getAttribute("data-run") ?? undefined;
}

export function followRuns(root: HTMLElement): void {
  const held = new Set<string>();
  let pointed: string | undefined;

  const show = (key: string): void => {
    const on = held.has(key) || pointed === key;
    for (const element of everywhere(key)) element.classList.toggle(marked, on);
  };
  const point = (key: string | undefined): void => {
    if (key === pointed) return;
    const before = pointed;
    pointed = key;
    for (const changed of [before, key]) if (changed !== undefined) show(changed);
  };

  root.addEventListener("pointerover", (event) => point(runAt(event.target)));
  root.addEventListener("pointerleave", () => point(undefined));
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
      if (!held.delete(key)) held.add(key);
      button.setAttribute("aria-pressed", String(held.has(key)));
      show(key);
    });
    name.replaceChildren(button);
  }
}
