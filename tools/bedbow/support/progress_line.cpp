#include "tools/bedbow/support/progress_line.h"

#include "io/units/output_units.h"

#include <unistd.h>

#include <cmath>
#include <cstdio>
#include <iostream>

namespace bedbow {

namespace {

constexpr std::chrono::seconds between_plain_lines{10};

std::string clock_time(double seconds) {
  if (!std::isfinite(seconds)) return "-";
  const auto s = static_cast<long long>(seconds + 0.5);
  char text[32];
  std::snprintf(text, sizeof text, "%lld:%02lld:%02lld", s / 3600, s / 60 % 60, s % 60);
  return text;
}

std::string line_of(const SweepProgress& p) {
  std::string out = std::to_string(p.done) + " of " + std::to_string(p.total) + " done, " + fixed(p.rate, 1) + "/s, " +
                    clock_time(p.seconds_left) + " left";
  if (p.failed > 0) out += ", " + std::to_string(p.failed) + " failed";
  if (!p.best) return out + ", none passes yet";
  const double cost = (*p.best)[Figure::cost];
  return out + ", best " + std::to_string(p.best->id + 1) + ": " +
         (std::isfinite(cost) ? "cost " + fixed(cost, 2) : fixed((*p.best)[Figure::mass], 2) + " kg");
}

} // namespace

ProgressLine::ProgressLine()
    : terminal_(::isatty(2) == 1)
    , next_(std::chrono::steady_clock::now()) {}

ProgressLine::~ProgressLine() {
  if (terminal_ && shown_) std::cerr << '\n';
}

void ProgressLine::show(const SweepProgress& p) {
  const auto now = std::chrono::steady_clock::now();
  if (terminal_) {
    std::cerr << "\r\033[K" << line_of(p).substr(0, 99) << std::flush;
    shown_ = true;
  } else if (now >= next_ || p.done == p.total) {
    std::cerr << line_of(p) << std::endl;
    next_ = now + between_plain_lines;
  }
}

} // namespace bedbow
