#include "sent_bodies.h"

#include "wire/app_requests.h"
#include "wire/asked_json.h"
#include "wire/kit_json.h"
#include "wire/problems_json.h"
#include "wire/tables_json.h"

#include <algorithm>
#include <cstdlib>

namespace keenfall::fuzz {

namespace {

void must_stand(bool condition) {
  if (!condition) std::abort();
}

// As long as a person's text may be, and on how many lines it may stand.
void must_be_short(const std::string& text, bool may_have_lines) {
  constexpr std::size_t kMostBytes = 1000;
  constexpr unsigned char kFirstSeen = 0x20;
  must_stand(text.size() <= kMostBytes);
  must_stand(std::ranges::all_of(text, [may_have_lines](unsigned char letter) {
    const bool is_of_lines = letter == '\n' || letter == '\r' || letter == '\t';
    return letter >= kFirstSeen || (may_have_lines && is_of_lines);
  }));
}

// Read; nothing where it was refused, which is then told.
template <class Read>
const typename Read::value_type* read_or_told(const Read& read) {
  if (read) return &*read;
  must_stand(!read.error().empty());
  must_stand(!wire::problems_to_json(read.error()).empty());
  return nullptr;
}

void kit_as_sent(std::string_view shelf_and_more, const std::string& body) {
  const std::string_view name = shelf_and_more.substr(0, shelf_and_more.find('/'));
  const auto shelf = std::ranges::find(wire::kKitShelves, name);
  if (shelf == wire::kKitShelves.end()) return;
  const auto at = static_cast<std::size_t>(shelf - wire::kKitShelves.begin());
  (void)read_or_told(wire::kit_thing_from(at, body));
  const auto change = wire::kit_change_from(at, body);
  if (const auto* made = read_or_told(change)) must_be_short(made->why, true);
}

void asked_of_trial(const std::string& body) {
  const auto asked = wire::asked_from(body);
  const auto* read = read_or_told(asked);
  if (read == nullptr) return;
  for (const trials::Claim& claim : read->asked.claims) must_be_short(claim.words, true);
}

void of_trial(std::string_view what, const std::string& body) {
  if (what == "asked") {
    asked_of_trial(body);
  } else if (what == "name") {
    const auto name = wire::name_from(body);
    if (const auto* read = read_or_told(name)) must_be_short(*read, false);
  } else if (what == "judgements") {
    (void)read_or_told(wire::judging_from(body));
  } else if (what == "reports") {
    (void)read_or_told(wire::report_request_from(body));
  } else if (what == "strikes") {
    const auto strike = wire::strike_from(body);
    if (const auto* read = read_or_told(strike)) must_be_short(read->reason, true);
  }
}

void of_tables(std::string_view what, const std::string& body) {
  if (what == "take") {
    const auto taken = wire::take_tables_from(body);
    if (const auto* read = read_or_told(taken)) must_be_short(read->trial_name, false);
  } else {
    (void)read_or_told(wire::read_tables_from(body));
  }
}

void of_notebook(std::string_view what, const std::string& body) {
  if (what == "notebooks") {
    (void)read_or_told(wire::open_notebook_from(body));
  } else if (what == "trials") {
    const auto begun = wire::new_trial_from(body);
    if (const auto* read = read_or_told(begun)) must_be_short(read->name, false);
  } else if (what == "export") {
    (void)read_or_told(wire::export_request_from(body));
  } else if (what == "undo") {
    const auto why = wire::why_from(body);
    if (const auto* read = read_or_told(why)) must_be_short(*read, true);
  }
}

}  // namespace

void body_as_sent(std::string_view path, const std::string& body) {
  constexpr std::string_view kApi = "/api/v1/";
  if (!path.starts_with(kApi)) return;
  path.remove_prefix(kApi.size());
  const std::string_view first = path.substr(0, path.find('/'));
  const std::string_view last = path.substr(path.rfind('/') + 1);
  if (first == "kit") {
    kit_as_sent(path.substr(std::min(first.size() + 1, path.size())), body);
  } else if (first == "tables") {
    of_tables(last, body);
  } else if (first == "trials" && last != first) {
    of_trial(last, body);
  } else {
    of_notebook(last, body);
  }
}

}  // namespace keenfall::fuzz
