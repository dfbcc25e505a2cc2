import { expect, test } from "vitest";
import { openForPrinting } from "../src/report/print";

test("what was closed is open on paper, and closed again on the screen", () => {
  document.body.innerHTML = "<details id=a></details><details id=b open></details>";
  const open = () => [...document.querySelectorAll("details")].map((details) => details.open);
  openForPrinting(window);

  window.dispatchEvent(new Event("beforeprint"));
  expect(open()).toEqual([true, true]);

  window.dispatchEvent(new Event("afterprint"));
  expect(open()).toEqual([false, true]);
});
