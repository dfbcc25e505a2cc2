#include "cli/section_drawing.h"

#include "cli/dot_canvas.h"
#include "cli/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace keenfall::cli {

namespace {

using wear::EdgeLine;

constexpr int kMargin = 9;  // columns for the scale
constexpr int kSideRows = 7;
constexpr int kStartRows = 2;
constexpr int kEndRows = 5;
constexpr double kLeastSpanUm = 2;
constexpr char kAsciiMetal = '#';
constexpr char kAsciiStart = '-';

// Segments from `first` on, one for each dot across.
struct Window {
  std::size_t first = 0;
  std::size_t segments = 0;
};

Window about_lowest(const EdgeLine& end, int dots_across) {
  const std::size_t all = end.height_um.size();
  const std::size_t wanted = std::min(all, static_cast<std::size_t>(dots_across));
  const auto deepest =
      static_cast<std::size_t>(std::ranges::min_element(end.height_um) - end.height_um.begin());
  const std::size_t half = wanted / 2;
  const std::size_t first = deepest > half ? deepest - half : 0;
  return {.first = std::min(first, all - wanted), .segments = wanted};
}

std::vector<double> part_of(const std::vector<double>& all, const Window& window) {
  const auto first = all.begin() + static_cast<std::ptrdiff_t>(window.first);
  return {first, first + static_cast<std::ptrdiff_t>(window.segments)};
}

// The canvas with its scale to the left: what the first and the last row stand for.
std::string with_scale(const DotCanvas& canvas,
                       const std::string& first,
                       const std::string& last,
                       const Look& look) {
  const auto rows = canvas.rows();
  std::string text;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string label = i == 0 ? first : i + 1 == rows.size() ? last : "";
    std::string row = rows[i];
    row.erase(row.find_last_not_of(' ') + 1);
    text += fitted(label, kMargin - 1, Side::right, look) + (row.empty() ? "" : " " + row) + "\n";
  }
  return text;
}

// Fits the margin.
std::string in_um(double um) {
  return std::abs(um) < 100 ? fmt::format("{:.1f} µm", um) : fmt::format("{:.0f} µm", um);
}

// The metal that is left, and the line where it began.
std::string from_the_side(const DrawnSection& drawn, const Window& window, const Look& look) {
  const auto start = part_of(drawn.start.height_um, window);
  const auto end = part_of(drawn.end.height_um, window);
  const double top = std::max(std::ranges::max(start), std::ranges::max(end));
  const double bottom = std::min(std::ranges::min(end), top - kLeastSpanUm);
  DotCanvas canvas(look.width - kMargin, kSideRows, look);
  const int last = canvas.dots_down() - 1;
  const auto down_to = [&](double height) {
    return static_cast<int>(std::lround((top - height) / (top - bottom) * last));
  };
  for (std::size_t i = 0; i < window.segments; ++i) {
    const int across = static_cast<int>(i);
    canvas.dot(across, down_to(start[i]), kAsciiStart);
    for (int down = down_to(end[i]); down <= last; ++down) canvas.dot(across, down, kAsciiMetal);
  }
  return with_scale(canvas, in_um(top), in_um(bottom), look);
}

// The land as a band about the middle of the canvas.
std::string from_above(const std::vector<double>& land, double widest, int rows, const Look& look) {
  DotCanvas canvas(look.width - kMargin, rows, look);
  const double half_dots = canvas.dots_down() / 2.0;
  for (std::size_t i = 0; i < land.size(); ++i) {
    const double half_band = std::max(0.5, land[i] / widest * half_dots);
    for (int down = 0; down < canvas.dots_down(); ++down) {
      const double from_middle = std::abs(down + 0.5 - half_dots);
      if (from_middle <= half_band) canvas.dot(static_cast<int>(i), down, kAsciiMetal);
    }
  }
  return with_scale(canvas, in_um(widest), "", look);
}

std::string heading(const std::string& words, const Look& look) {
  return wrapped(shown_as(words, look), {}, look);
}

}  // namespace

std::string section_drawing(const DrawnSection& drawn, const Look& look) {
  const DotCanvas measure(look.width - kMargin, 1, look);
  const Window window = about_lowest(drawn.end, measure.dots_across());
  const double length_um = static_cast<double>(window.segments) * drawn.end.segment_length_um;
  const auto land_at_start = part_of(drawn.start.land_width_um, window);
  const auto land_at_end = part_of(drawn.end.land_width_um, window);
  const double widest = std::max(std::ranges::max(land_at_start), std::ranges::max(land_at_end));
  // Both bands to one scale: a row of the start is as high as a row of the end.
  const double widest_at_start = widest * kStartRows / kEndRows;
  return heading(
             fmt::format("{:.0f} µm of the edge about its lowest place, by wear, chips and folds "
                         "that fell off together, from the side, its heights stretched: what "
                         "is left after {} cuts, under the line where it began.",
                         length_um,
                         drawn.cuts),
             look) +
         from_the_side(drawn, window, look) +
         heading("The same from above: the land at the start, then at the end.", look) +
         from_above(land_at_start, widest_at_start, kStartRows, look) +
         from_above(land_at_end, widest, kEndRows, look);
}

}  // namespace keenfall::cli
