#include "cli/terminal.h"

#include "cli/interruption.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>

#include <sys/ioctl.h>
#include <unistd.h>

namespace keenfall::cli {

namespace {

// Set and not empty.
std::string from_environment(const char* name) {
  const char* content = std::getenv(name);
  return content == nullptr ? std::string() : std::string(content);
}

std::string locale_in_force() {
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
    std::string locale = from_environment(name);
    if (!locale.empty()) return locale;
  }
  return {};
}

int terminal_columns() {
  winsize size{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return 0;
  return size.ws_col;
}

bool is_utf8(std::string locale) {
  std::ranges::transform(locale, locale.begin(), [](unsigned char letter) {
    return static_cast<char>(std::tolower(letter));
  });
  return locale.find("utf-8") != std::string::npos || locale.find("utf8") != std::string::npos;
}

}  // namespace

TerminalFacts facts_of_standard_output() {
  const bool is_terminal = isatty(STDOUT_FILENO) == 1;
  return {.is_terminal = is_terminal,
          .columns = is_terminal ? terminal_columns() : 0,
          .locale = locale_in_force(),
          .no_color = !from_environment("NO_COLOR").empty(),
          .is_dumb = from_environment("TERM") == "dumb"};
}

bool standard_error_is_a_terminal() { return isatty(STDERR_FILENO) == 1; }

void wait_for_enter() {
  char typed = '\0';
  while (typed != '\n') {
    if (is_interrupted_before_readable(STDIN_FILENO) || read(STDIN_FILENO, &typed, 1) != 1) return;
  }
}

Look look_for(const TerminalFacts& facts) {
  Look look;
  if (facts.columns > 0) look.width = std::clamp(facts.columns, kNarrowest, kWidest);
  look.unicode = is_utf8(facts.locale);
  look.colour = facts.is_terminal && !facts.no_color && !facts.is_dumb;
  return look;
}

}  // namespace keenfall::cli
