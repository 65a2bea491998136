#include "io/vtk/vtk_grid.h"

#include "io/draw/surface.h"
#include "io/units/quantities_out.h"

#include <algorithm>

namespace bedbow {

namespace {

void append(std::vector<float>& to, const Eigen::Vector3d& v, double factor) {
  for (int i = 0; i < 3; ++i) to.push_back(static_cast<float>(v[i] * factor));
}

/// Index of a name in a list that grows with new names.
int index_of(std::vector<std::string>& names, const std::string& name) {
  const auto it = std::find(names.begin(), names.end(), name);
  if (it != names.end()) return static_cast<int>(it - names.begin());
  names.push_back(name);
  return static_cast<int>(names.size()) - 1;
}

template <class Value>
VtkArray scalars(const Surface& surface, const std::string& name, const std::string& unit, const Value& value) {
  VtkArray out{name, unit, 1, {}};
  out.values.reserve(surface.points.size());
  for (const SurfacePoint& p : surface.points) out.values.push_back(static_cast<float>(value(p)));
  return out;
}

VtkArray vectors(const Surface& surface, const std::string& name, const std::string& unit,
                 Eigen::Vector3d SurfacePoint::*member, double factor) {
  VtkArray out{name, unit, 3, {}};
  out.values.reserve(3 * surface.points.size());
  for (const SurfacePoint& p : surface.points) append(out.values, p.*member, factor);
  return out;
}

VtkArray principal(const Surface& surface) {
  VtkArray out{"principal", "MPa", 2, {}};
  for (const SurfacePoint& p : surface.points) {
    out.values.push_back(static_cast<float>(to_MPa(p.principal_1)));
    out.values.push_back(static_cast<float>(to_MPa(p.principal_2)));
  }
  return out;
}

void add_cells(VtkGrid& grid, const Surface& surface) {
  for (const SurfaceCell& c : surface.cells) {
    const bool triangle = c[3] < 0;
    for (std::size_t i = 0; i < (triangle ? 3U : 4U); ++i) grid.connectivity.push_back(c[i]);
    grid.offsets.push_back(static_cast<std::int64_t>(grid.connectivity.size()));
    grid.types.push_back(triangle ? VtkCell::triangle : VtkCell::quad);
  }
}

void add_names(VtkGrid& grid, const Surface& surface) {
  VtkIndex bar{"bar", {}}, body{"body", {}};
  VtkNames bars{"bar_names", {}}, bodies{"body_names", {}};
  for (const SurfacePart& p : surface.parts) {
    bar.values.insert(bar.values.end(), static_cast<std::size_t>(p.cells), static_cast<int>(bars.values.size()));
    bars.values.push_back(p.name);
    body.values.insert(body.values.end(), static_cast<std::size_t>(p.cells), index_of(bodies.values, p.body));
  }
  grid.cell_indices = {std::move(bar), std::move(body)};
  grid.fields = {std::move(bars), std::move(bodies)};
}

} // namespace

VtkGrid surface_grid(const Fields& fields, const std::string& step) {
  const Surface surface = surface_of(fields);
  VtkGrid grid;
  grid.points.reserve(3 * surface.points.size());
  for (const SurfacePoint& p : surface.points) append(grid.points, p.at, to_mm(1));
  add_cells(grid, surface);
  grid.point_arrays = {vectors(surface, "displacement", "mm", &SurfacePoint::displacement, to_mm(1)),
                       vectors(surface, "rotation", "deg", &SurfacePoint::rotation, to_deg(1)),
                       scalars(surface, "von_mises", "MPa", [](const auto& p) { return to_MPa(p.von_mises); })};
  if (!fields.shells.empty())
    grid.point_arrays.push_back(
        scalars(surface, "von_mises_middle", "MPa", [](const auto& p) { return to_MPa(p.von_mises_middle); }));
  grid.point_arrays.push_back(principal(surface));
  grid.point_arrays.push_back(scalars(surface, "utilisation", "1", [](const auto& p) { return p.utilisation; }));
  add_names(grid, surface);
  grid.fields.push_back({"step", {step}});
  return grid;
}

VtkGrid force_grid(const std::vector<ForceArrow>& arrows, const std::string& step) {
  VtkGrid grid;
  VtkArray force{"force", "N", 3, {}}, pressure{"pressure", "MPa", 1, {}};
  VtkIndex joint{"joint", {}}, kind{"kind", {}};
  VtkNames joints{"joint_names", {}}, kinds{"kind_names", {}};
  for (const ForceArrow& a : arrows) {
    append(grid.points, a.at, to_mm(1));
    grid.connectivity.push_back(static_cast<std::int64_t>(grid.connectivity.size()));
    grid.offsets.push_back(static_cast<std::int64_t>(grid.connectivity.size()));
    grid.types.push_back(VtkCell::vertex);
    append(force.values, a.force, 1);
    pressure.values.push_back(static_cast<float>(to_MPa(a.pressure)));
    joint.values.push_back(index_of(joints.values, a.name));
    kind.values.push_back(index_of(kinds.values, a.kind));
  }
  grid.point_arrays = {std::move(force), std::move(pressure)};
  grid.cell_indices = {std::move(joint), std::move(kind)};
  grid.fields = {std::move(joints), std::move(kinds), {"step", {step}}};
  return grid;
}

} // namespace bedbow
