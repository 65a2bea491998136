#include "io/case/case_joint_parts.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bedbow {

namespace {

/// How many screws a row may have: more is most likely a mistake.
constexpr double most_screws = 10000;

/// Right end of the length that both bars share; NaN where that is not known.
double common_end(const Machine& m, const std::array<Ref, 2>& joins) {
  double end = std::numeric_limits<double>::infinity();
  for (const Ref& r : joins)
    if (r.kind == Ref::Kind::bar) end = std::min(end, m.bar(r).end());
  return std::isfinite(end) ? end : left_out;
}

/// Screws from `first` at `pitch` up to and including `last`.
std::vector<double> row(double first, double pitch, double last) {
  constexpr double slack = 1e-9;
  std::vector<double> x;
  const double n = std::floor((last - first + slack) / pitch) + 1;
  if (!(n >= 1 && n <= most_screws)) return x;
  for (int i = 0; i < static_cast<int>(n); ++i) x.push_back(first + i * pitch);
  return x;
}

std::vector<double> by_count(double first, double pitch, int count) {
  std::vector<double> x;
  for (int i = 0; i < count; ++i) x.push_back(i == 0 ? first : first + i * pitch); // one alone needs no pitch
  return x;
}

std::vector<double> places(const CaseBuilder& b, const CaseValues& in, const Screws& s) {
  const double first = in.number_or_nan("first"), pitch = in.number_or_nan("pitch"), last = in.number_or_nan("last");
  const int count = in.integer_or("count", 0);
  if (in.given("pitch") && in.given("count") && in.given("last")) {
    b.wrong(in, "last", "pitch, count and last overdetermine the row: omit one");
    return {};
  }
  if (in.given("count") && in.given("last"))
    return by_count(first, count > 1 ? (last - first) / (count - 1) : 0, count);
  if (!in.given("pitch") && count != 1) {
    b.missing(in, "pitch", "the distance from screw to screw, or both `count` and `last`");
    return {};
  }
  if (in.given("count")) return by_count(first, pitch, count);
  const double end = in.given("last") ? last : common_end(b.machine(), s.joins);
  if (!std::isfinite(first) || !std::isfinite(pitch) || !std::isfinite(end)) return {};
  auto x = row(first, pitch, end);
  if (x.empty())
    b.wrong(in, in.given("last") ? "last" : "first",
            first > end ? "the row ends before its first screw" : "the row would have more than 10000 screws");
  return x;
}

} // namespace

void read_joint(const CaseBuilder& b, const CaseValues& in, Screws& s) {
  joint_base(b, in, s);
  s.at.y() = in.number_or("y", left_out);
  s.diameter = in.number_or_nan("size");
  s.thread = thread_of(in, "size");
  s.grade = grade_of(b, in, s.diameter);
  s.shear_stiffness = in.number("shear_stiffness");
  s.allowed_shear = in.number("allowed_shear");
  s.allowed_tension = in.number("allowed_tension");
  s.allowed_bearing = in.number("allowed_bearing");
  s.x = places(b, in, s);
}

} // namespace bedbow
