#include "telling/title.h"

#include <fmt/format.h>
#include <cctype>
#include <set>

namespace keenfall::telling {

namespace {

using verdicts::Judgement;

std::string begun_large(std::string words) {
  if (!words.empty()) {
    words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  }
  return words;
}

// The way of cutting, where it is one for all arms (else each medium's heading names it).
std::string common_method_words(const Judgement& judgement) {
  std::set<std::string> methods;
  for (const auto& arm : judgement.arms) methods.insert(in_words(arm.arm.method));
  return methods.size() == 1 ? *methods.begin() : std::string();
}

}  // namespace

std::string title(const Judgement& judgement) {
  int runs = 0;
  for (const auto& arm : judgement.arms) runs += arm.runs;
  return begun_large(judgement.kind.words.empty() ? judgement.kind.name : judgement.kind.words) +
         ", " + judgement.unit + (runs == 1 ? "; 1 run" : fmt::format("; {} runs", runs));
}

std::string details(const Judgement& judgement) {
  std::string words;
  if (!judgement.thread.empty()) words = "Thread: " + judgement.thread + ". ";
  const std::string method = common_method_words(judgement);
  if (!method.empty()) words += "Cut: " + method + ".";
  while (words.ends_with(' ')) words.pop_back();
  return words;
}

}  // namespace keenfall::telling
