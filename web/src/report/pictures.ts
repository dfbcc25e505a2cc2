// Which picture belongs to a figure of the page, by its name.

import { mount } from "svelte";
import CurvePictures from "../components/CurvePictures.svelte";
import Picture from "../components/Picture.svelte";
import type { Named } from "../plots/drawn";
import { levelChart, mediaChart, orderChart } from "../plots/lines";
import { factorPicture, lastingPicture, ratioPicture, startPicture } from "../plots/rows";
import { at, type JudgementView, judgementView, type PairView } from "../plots/view";
import type { Report } from "../wire/report";

/** The numbers in an attribute: data-pairs="0,3". */
function numbersIn(text: string | undefined): number[] {
  return text ? text.split(",").map(Number) : [];
}

function pairsOf(view: JudgementView, figure: HTMLElement): PairView[] {
  return numbersIn(figure.dataset.pairs).map((place) => at(view.pairs, place));
}

function mediaColumns(view: JudgementView) {
  return (view.judgement.media_compared?.media ?? []).map(({ arms }) => ({
    words:
      view.media.find((medium) => medium.arms.includes(at(view.arms, arms[0] ?? 0)))?.words ?? "",
    arms: arms.map((place) => at(view.arms, place)),
  }));
}

/** Draws the figure's picture into `place`; false where the page names one that is not known. */
function draw(report: Report, figure: HTMLElement, place: HTMLElement, named: Named): boolean {
  const view = judgementView(report, Number(figure.dataset.judgement ?? 0));
  const medium = at(view.media, Number(figure.dataset.medium ?? 0));
  const one = (options: (width: number) => ReturnType<typeof orderChart>, widest = 760) => {
    mount(Picture, { target: place, props: { options, named, widest } });
    return true;
  };
  switch (figure.dataset.figure) {
    case "curves":
      mount(CurvePictures, { target: place, props: { view, medium, named } });
      return true;
    case "ratios":
      return one((width) => ratioPicture(view, pairsOf(view, figure), width));
    case "lasting":
      return one((width) => lastingPicture(view, medium.arms, width));
    case "starts":
      return one((width) => startPicture(view, medium.arms, width));
    case "factors":
      return one((width) => factorPicture(view, width));
    case "levels":
      return pairsOf(view, figure)
        .slice(0, 1)
        .every((pair) => one((width) => levelChart(view.judgement, pair, width), 420));
    case "media":
      return one((width) => mediaChart(mediaColumns(view), view.lastingWords, width), 560);
    case "order":
      return one((width) => orderChart(view.arms, width));
    default:
      return false;
  }
}

export function drawPictures(report: Report, root: HTMLElement): void {
  root.querySelectorAll<HTMLElement>("figure[data-figure]").forEach((figure, number) => {
    const place = figure.querySelector<HTMLElement>(".picture");
    const caption = figure.querySelector("figcaption");
    const words = figure.querySelector(".in-words");
    if (!place || !caption || !words) return;
    caption.id ||= `caption-${number}`;
    words.id ||= `words-${number}`;
    place.hidden = false;
    const named = { labelledBy: caption.id, describedBy: words.id };
    if (!draw(report, figure, place, named)) place.hidden = true;
  });
}
