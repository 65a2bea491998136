#include "mesh/piece/fastener.h"

#include "mesh/piece/si.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <utility>

namespace bedbow {

namespace {

using si::inch, si::mm;

// Metric coarse: diameter and pitch [mm], ISO 261 / ISO 724.
constexpr std::array<std::pair<double, double>, 17> coarse{{{3, 0.5},
                                                            {4, 0.7},
                                                            {5, 0.8},
                                                            {6, 1},
                                                            {8, 1.25},
                                                            {10, 1.5},
                                                            {12, 1.75},
                                                            {14, 2},
                                                            {16, 2},
                                                            {18, 2.5},
                                                            {20, 2.5},
                                                            {22, 2.5},
                                                            {24, 3},
                                                            {27, 3},
                                                            {30, 3.5},
                                                            {33, 3.5},
                                                            {36, 4}}};

// Unified coarse: name, diameter [in], threads per inch. ASME B1.1.
struct Unified {
  std::string_view name;
  double d, per_inch;
};
constexpr std::array<Unified, 11> unified{{{"1/4-20", 0.25, 20},
                                           {"5/16-18", 0.3125, 18},
                                           {"3/8-16", 0.375, 16},
                                           {"7/16-14", 0.4375, 14},
                                           {"1/2-13", 0.5, 13},
                                           {"9/16-12", 0.5625, 12},
                                           {"5/8-11", 0.625, 11},
                                           {"3/4-10", 0.75, 10},
                                           {"7/8-9", 0.875, 9},
                                           {"1-8", 1, 8},
                                           {"1 1/4-7", 1.25, 7}}};

std::optional<double> number(std::string_view text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || !(value > 0) || !std::isfinite(value)) return {};
  return value;
}

std::optional<Thread> metric(std::string_view name) {
  const auto cross = name.find_first_of("xX");
  const auto d = number(name.substr(1, cross == std::string_view::npos ? cross : cross - 1));
  if (!d) return {};
  if (cross != std::string_view::npos) {
    const auto pitch = number(name.substr(cross + 1));
    // A pitch over a quarter of the diameter leaves no core: no standard thread is that coarse.
    if (!pitch || *pitch > *d / 4) return {};
    return Thread{std::string(name), *d * mm, *pitch * mm, false};
  }
  for (const auto& [size, pitch] : coarse)
    if (size == *d) return Thread{std::string(name), size * mm, pitch * mm, false};
  return {};
}

double circle(double diameter) {
  return std::numbers::pi / 4 * diameter * diameter;
}

} // namespace

std::optional<Thread> find_thread(std::string_view name) {
  if (name.empty()) return {};
  if (name.front() == 'M') return metric(name);
  std::string_view bare = name;
  if (bare.ends_with(" UNC")) bare.remove_suffix(4);
  for (const Unified& u : unified)
    if (u.name == bare) return Thread{std::string(name), u.d * inch, inch / u.per_inch, true};
  return {};
}

Thread thread_of_size(const std::string& name, double diameter) {
  if (const auto found = find_thread(name)) return *found;
  char text[24];
  std::snprintf(text, sizeof text, "M%.6g", diameter * 1e3);
  if (const auto found = find_thread(text)) return *found;
  return {"", diameter, diameter / 8, false};
}

std::string thread_names() {
  std::string out;
  for (const auto& row : coarse) out += "M" + std::to_string(static_cast<int>(row.first)) + ", ";
  out += "a fine pitch such as M20x1.5, or";
  for (const Unified& u : unified) out.append(u.name == unified.front().name ? " " : ", ").append(u.name);
  return out;
}

double stress_diameter(const Thread& thread) {
  return thread.d - (thread.inch ? 0.9743 : 0.9382) * thread.pitch;
}

double stress_area(const Thread& thread) {
  return circle(stress_diameter(thread));
}

double core_area(const Thread& thread) {
  return circle(thread.core());
}

ThreadShear thread_shear(const Thread& thread) {
  using std::numbers::pi, std::numbers::sqrt3;
  const double P = thread.pitch, D1 = thread.nut_minor(), d2 = thread.pitch_diameter();
  return {pi * D1 / P * (P / 2 + (d2 - D1) / sqrt3), pi * thread.d / P * (P / 2 + (thread.d - d2) / sqrt3)};
}

double proof_load(const Thread& thread, const Grade& grade) {
  return grade.proof * stress_area(thread);
}

} // namespace bedbow
