#include "workbench/open_app.h"

#include "workbench/cautions.h"
#include "workbench/notebook_place.h"

#include <filesystem>
#include <utility>

namespace keenfall::workbench {

OpenApp::OpenApp(Settings settings)
    : settings_(std::move(settings)), notebook_(settings_.notebook) {}

void OpenApp::open(const std::string& notebook) {
  const std::lock_guard lock(mutex_);
  notebook_ = notebook;
}

base::Result<std::string> OpenApp::notebook() const {
  const std::lock_guard lock(mutex_);
  if (notebook_) return *notebook_;
  return base::failed({.kind = base::ProblemKind::missing,
                       .sentence = "No notebook is open.",
                       .accepted = "opening one, or making a new one, on the first page"});
}

wire::AppTold OpenApp::told() const {
  wire::AppTold told{.program_version = settings_.program_version,
                     .cautions = cautions(),
                     .folder = settings_.folder};
  const auto path = notebook();
  if (!path) return told;
  auto place = notebook_place(*path);
  if (place) {
    told.notebook = wire::OpenNotebookTold{.name = std::move(place->name),
                                           .path = std::move(place->path),
                                           .uid = std::move(place->uid),
                                           .id = std::move(place->id),
                                           .may_write = place->may_write,
                                           .why_not = std::move(place->why_not)};
  } else {
    told.notebook = wire::OpenNotebookTold{.name = std::filesystem::path(*path).filename().string(),
                                           .path = *path,
                                           .may_write = false,
                                           .why_not = place.error().sentence};
  }
  return told;
}

std::string OpenApp::parting_words() const {
  const auto path = notebook();
  if (!path) return "No notebook was open.";
  return "What you have taken in is in the notebook " + *path + ".";
}

Hand OpenApp::hand() const {
  return {.who = settings_.who,
          .machine_words = settings_.machine_words,
          .at_utc = settings_.utc_now(),
          .why = {},
          .patience = settings_.patience};
}

Hand OpenApp::hand(std::chrono::steady_clock::time_point came_at, const std::string& why) const {
  Hand hand = this->hand();
  hand.why = why;
  hand.waits_since = came_at;
  return hand;
}

JudgedBy OpenApp::judged_by() const {
  return {.hand = hand(), .program_version = settings_.program_version};
}

}  // namespace keenfall::workbench
