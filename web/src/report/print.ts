// On paper the numbers behind every picture are there, whether or not they were open on screen.

export function openForPrinting(page: Window): void {
  let opened: HTMLDetailsElement[] = [];
  page.addEventListener("beforeprint", () => {
    opened = [...page.document.querySelectorAll<HTMLDetailsElement>("details:not([open])")];
    for (const details of opened) details.open = true;
  });
  page.addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
    opened = [];
  });
}
