/// \file
/// Acceptance limits. Each is declared once, as a row of `limit_kinds`: schema, reader, messages, verdict
/// and reports loop over them. How a step's value is taken: solver/findings/limited.h.
#pragma once

#include "mesh/piece/quantity.h"

#include <array>
#include <limits>
#include <optional>
#include <string_view>

namespace bedbow {

struct Limits {
  std::optional<double> bow;          ///< [m]
  std::optional<double> angle;        ///< [rad]
  std::optional<double> utilisation;  ///< of yield, proof or allowable pressure
  std::optional<double> buckling;     ///< least load factor
  std::optional<double> nose_opening; ///< of the nose over the sheet [m]
};

/// Default of [limits] nose_opening as a fraction of the sheet's thickness: common practice, no source.
inline constexpr double usual_nose_opening = 0.05;

/// A part used over the whole of what it bears fails: a limit of utilisation above that does not count.
inline constexpr double whole_utilisation = 1;

struct LimitKind {
  std::string_view key; ///< of [limits]
  std::optional<double> Limits::*member;
  Quantity of;
  std::string_view example;                                ///< an accepted value
  std::string_view doc;                                    ///< what is limited, for the tables of keys
  std::string_view name;                                   ///< the same in a list of limits
  double usual = std::numeric_limits<double>::quiet_NaN(); ///< holds where the key is omitted; NaN: not judged then
  bool of_steps = true;                                    ///< judged in every step; else with the buckling factors
};

inline constexpr std::array limit_kinds{
    LimitKind{"bow", &Limits::bow, Quantity::length, "0.25 mm", "greatest bow of any body", "bow"},
    LimitKind{"angle", &Limits::angle, Quantity::angle, "0.5 deg", "spread of the bend angle along the sheet",
              "angle spread"},
    LimitKind{"utilisation", &Limits::utilisation, Quantity::ratio, "0.67",
              "greatest utilisation of yield, proof load or allowable pressure; more than 1 counts as 1", "utilisation",
              whole_utilisation},
    // A common margin for effects that linear buckling neglects (common practice, no source).
    LimitKind{"buckling", &Limits::buckling, Quantity::ratio, "3", "least buckling load factor", "buckling factor", 3,
              false},
    LimitKind{"nose_opening", &Limits::nose_opening, Quantity::length, "0.05 mm",
              "greatest opening of the nose over the sheet", "nose opening"},
};

/// A limit of the case, or the usual one where it is omitted; NaN where there is none. Of utilisation at most
/// `whole_utilisation`.
constexpr double limit_or_usual(const Limits& limits, std::optional<double> Limits::*member) {
  for (const LimitKind& kind : limit_kinds) {
    if (kind.member != member) continue;
    const double limit = (limits.*member).value_or(kind.usual);
    return member == &Limits::utilisation && limit > whole_utilisation ? whole_utilisation : limit;
  }
  return std::numeric_limits<double>::quiet_NaN();
}

/// Whether the case gives a limit that is judged in every step.
constexpr bool any_limit_of_steps(const Limits& limits) {
  for (const LimitKind& kind : limit_kinds)
    if (kind.of_steps && limits.*kind.member) return true;
  return false;
}

} // namespace bedbow
