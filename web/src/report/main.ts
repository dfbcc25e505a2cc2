// What makes a report's page more than a printed one: its pictures, and a run followed through it.

import type { Report } from "../wire/report";
import { FollowedRuns, followRuns } from "./follow_run";
import { drawPictures } from "./pictures";
import { openForPrinting } from "./print";
import "./report.css";
import "./print.css";

const data = document.getElementById("report-data");
if (data?.textContent) {
  const report: Report = JSON.parse(data.textContent);
  const followed = new FollowedRuns();
  followRuns(document.body, followed);
  drawPictures(report, document.body, followed);
}
openForPrinting(window);
