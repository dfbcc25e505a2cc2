// A form with a field that is marked wrong is not sent: what is typed there would be lost without a word.

import type { Problem } from "../wire/api";
import { neededMark } from "./needed";

function called(field: HTMLElement): string {
  const label = (field as HTMLInputElement).labels?.[0]?.textContent;
  const words = (label ?? field.getAttribute("aria-label") ?? "").trim().replace(/\s+/g, " ");
  return words.replace(neededMark, "");
}

function hintOf(field: HTMLElement): string {
  const id = field.getAttribute("aria-describedby");
  return (id && document.getElementById(id)?.textContent?.trim()) || "";
}

export class WrongField {
  /** Of the field that keeps the form from being sent; gone as soon as something is typed. */
  problems: Problem[] = $state.raw([]);

  /** Whether something in there is marked wrong: the first gets the focus, and a sentence says so. */
  foundIn(form: HTMLElement): boolean {
    const field = form.querySelector<HTMLElement>('[aria-invalid="true"]');
    if (!field) {
      this.problems = [];
      return false;
    }
    const text = (field as HTMLInputElement).value.trim();
    const said = text === "" ? "is empty" : `cannot be “${text}”`;
    const sentence = `Nothing is kept yet: “${called(field)}” ${said}. ${hintOf(field)}`;
    this.problems = [{ kind: "bad_value", sentence: sentence.trim() }];
    let around = field.closest("details");
    while (around) {
      around.open = true;
      around = around.parentElement?.closest("details") ?? null;
    }
    field.focus();
    form.addEventListener(
      "input",
      () => {
        this.problems = [];
      },
      { once: true },
    );
    return true;
  }
}
