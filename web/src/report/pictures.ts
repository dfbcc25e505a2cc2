// Puts every picture of a page into its figure.

import { mount } from "svelte";
import FigurePicture from "../components/FigurePicture.svelte";
import { figureChart } from "../plots/figure_chart";
import type { Report } from "../wire/report";
import type { FollowedRuns } from "./follow_run";

export function drawPictures(report: Report, root: HTMLElement, followed: FollowedRuns): void {
  root.querySelectorAll<HTMLElement>("figure[data-figure]").forEach((figure, number) => {
    const place = figure.querySelector<HTMLElement>(".picture");
    const caption = figure.querySelector("figcaption");
    const words = figure.querySelector(".in-words");
    if (!place || !caption || !words) return;
    caption.id ||= `caption-${number}`;
    words.id ||= `words-${number}`;
    place.hidden = false;
    const named = { labelledBy: caption.id, describedBy: words.id };
    const drawing = { named, finish: (picture: Element) => followed.markIn(picture) };
    const chart = () => figureChart(report, figure.dataset);
    mount(FigurePicture, { target: place, props: { chart, drawing } });
  });
}
