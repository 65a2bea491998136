/// \file
/// State shared by the parts of buildable(): the machine with what is known of its bars. Only they use this.
#pragma once

#include "mesh/check/buildable.h"
#include "mesh/check/outline.h"
#include "mesh/check/part_keys.h"
#include "mesh/machine/bar_box.h"
#include "mesh/piece/fastener.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bedbow {

/// What a drawing may be out by without meaning it [m]: sizes are given to a tenth of a millimetre. No source.
inline constexpr double drawing_slack = 0.1e-3;

/// A bar of known size where it lies.
struct DrawnBar {
  Ref ref;
  const Bar* bar = nullptr;
  std::string name; ///< "bed.web"
  Polygon outline;
  BarBox box;
  bool block = false; ///< fills its box
};

/// A round hole or a stud along z, in plan [m].
struct Upright {
  double x = 0, y = 0;
  [[nodiscard]] double distance(const Upright& other) const;
};

struct Drawing {
  const Machine& machine;
  const Registry<ShapeEntry>& shapes;
  std::vector<DrawnBar> bars;
  std::vector<Fault> faults;

  /// Null for what is not a bar, or a bar of unknown size.
  [[nodiscard]] const DrawnBar* find(const Ref& ref) const;
  /// The bars of known size that a joint joins, the lower first.
  [[nodiscard]] std::vector<const DrawnBar*> joined(const JointBase& joint) const;
  /// A joint's place, completed from the bars of known size that it joins (mesh/machine/joint_place.h).
  [[nodiscard]] Eigen::Vector3d whole_place(const JointBase& joint) const;
  /// Its x and y; nullopt where no bar of known size tells them.
  [[nodiscard]] std::optional<Upright> place(const JointBase& joint) const;
  void add(Fault fault) { faults.push_back(std::move(fault)); }
};

Drawing drawing_of(const Machine& machine, const Registry<ShapeEntry>& shapes);

/// By how much two intervals miss each other; below 0 by how much they overlap [m].
double miss(double from, double to, double other_from, double other_to);

/// Extent along y of the part of an outline between two heights [m]; nullopt where there is none.
std::optional<std::pair<double, double>> extent_between(const Polygon& outline, double low, double high);

void check_bars(Drawing& d);  // build_bars.cpp: gaps and overlaps
void check_holes(Drawing& d); // build_holes.cpp: posts' and screws' holes in their bars
void check_studs(Drawing& d); // build_studs.cpp: what a stud passes through, its nuts and spanners
// build_line.cpp: bed, sheet, nose, face, set-back and swing
void check_line(Drawing& d, const Springback& springback);
void check_cams_and_hinges(Drawing& d); // build_pivots.cpp

} // namespace bedbow
