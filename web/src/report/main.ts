// What makes a report's page more than a printed one: its pictures, and a run followed through it.

import type { Report } from "../wire/report";
import { followRuns } from "./follow_run";
import { drawPictures } from "./pictures";
import "./report.css";

const data = document.getElementById("report-data");
if (data?.textContent) {
  const report: Report = JSON.parse(data.textContent);
  drawPictures(report, document.body);
  followRuns(document.body);
}
