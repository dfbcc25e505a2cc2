// For tests: a trial with a sealed plan, and runs of it that are cut at the bench.
#pragma once

#include "server/asked_app_test.h"

#include <string>

namespace keenfall::server::testing {

inline json what_is_to_be_cut() {
  json plan = a_plan({0, 1, 3});
  plan["reading"] = {{"kind", "thread_push"}, {"repeats", 2}, {"stations", {"heel", "tip"}}};
  return {{"claims", {{{"words", "B outlasts A"}, {"worth_it_margin", 1.5}}}}, {"plan", plan}};
}

inline const std::string kRun = "0123456789abcdef0123456789abcdef";

class AskedBench : public AskedApp {
 protected:
  void with_sealed_trial() {
    (void)got("POST", "/notebooks", "App", {{"how", "make"}, {"path", "bench"}});
    trial_ =
        got("POST", "/trials", "Trial", {{"name", "Rope"}, {"asked", what_is_to_be_cut()}})["uid"];
    (void)got("POST", "/trials/" + trial_ + "/seal", "Trial");
  }
  json begun(std::size_t line = 0, const std::string& uid = kRun) {
    const json bench = got("GET", "/trials/" + trial_ + "/bench", "Bench");
    json begin = {{"uid", uid}, {"line", line}};
    if (bench["lines"][line].contains("order")) begin["order"] = bench["lines"][line]["order"];
    return got("POST", "/trials/" + trial_ + "/bench", "BenchRun", begin);
  }
  json entry(const json& fields) {
    json made = {{"id", "e" + std::to_string(++entries_)}, {"at_ms", 1764000000000 + entries_}};
    made.update(fields);
    return made;
  }
  json tapped(const json& fields, const std::string& uid = kRun) {
    return got("POST", "/bench/" + uid, "BenchRun", {{"entries", {entry(fields)}}});
  }
  json read(double at_cuts, double reading, const std::string& uid = kRun) {
    return tapped({{"what", "reading"}, {"cuts", at_cuts}, {"reading", reading}}, uid);
  }
  // To the cap at 3 cuts, and closed.
  json cut_through(const std::string& uid = kRun) {
    for (const double cuts : {0.0, 1.0, 3.0}) {
      if (cuts > 0) (void)tapped({{"what", "cuts"}, {"cuts", cuts == 1 ? 1 : 2}}, uid);
      (void)read(cuts, 104 + cuts, uid);
      (void)read(cuts, 102 + cuts, uid);
      if (cuts == 0) (void)tapped({{"what", "start"}, {"subject", "matched"}}, uid);
    }
    return tapped({{"what", "closed"}}, uid);
  }
  json page() { return got("GET", "/trials/" + trial_, "Trial"); }

  std::string trial_;
  int entries_ = 0;
};

}  // namespace keenfall::server::testing
