// [mesh]: what the cells and arrays of a mesh file mean.
#include "io/case/case_mesh_arrays.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace bedbow {

namespace {

constexpr int line_cell = 3, quad_cell = 9; // VTK cell types

/// Cells that are neither lines nor quads, and cells that refer to missing points. \return whether there are none.
bool check_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid) {
  std::map<int, std::vector<int>> strange;
  std::vector<int> lost;
  const auto points = static_cast<std::int64_t>(grid.points.size() / 3);
  std::int64_t begin = 0;
  for (std::size_t c = 0; c < grid.types.size(); ++c) {
    const std::int64_t end = grid.offsets[c];
    const std::int64_t due = grid.types[c] == line_cell ? 2 : 4;
    if (grid.types[c] != line_cell && grid.types[c] != quad_cell)
      strange[grid.types[c]].push_back(static_cast<int>(c));
    else if (end - begin != due || std::any_of(grid.connectivity.begin() + begin, grid.connectivity.begin() + end,
                                               [&](std::int64_t p) { return p < 0 || p >= points; }))
      lost.push_back(static_cast<int>(c));
    begin = end;
  }
  for (const auto& [type, cells] : strange)
    b.wrong(in, "file",
            std::to_string(cells.size()) + " of its cells are of VTK type " + std::to_string(type) +
                ", which is neither a line (3) nor a quad (9): " + number_list(cells));
  if (!lost.empty()) b.wrong(in, "file", "cells that refer to points that do not exist: " + number_list(lost));
  if (grid.types.empty()) b.wrong(in, "file", "it has no cells; lines (type 3) are beams, quads (type 9) are shells");
  return strange.empty() && lost.empty() && !grid.types.empty();
}

std::vector<OwnSection> sections_of(const CaseBuilder& b, const CaseValues& in) {
  std::vector<OwnSection> out;
  for (const CaseValues& s : in.tables("section")) {
    OwnSection section;
    section.name = s.text("name").value_or(std::to_string(out.size() + 1));
    section.shape = shape_of(b, s, 0.3); // made again with the material's Poisson ratio when it is meshed
    section.up = s.vector3("up");
    if (std::ranges::find(out, section.name, &OwnSection::name) != out.end())
      b.wrong(s, "name", "another [[mesh.section]] has the name \"" + section.name + "\"");
    if (s.given("up") && section.up.norm() == 0)
      b.wrong(s, "up", "`up` is a zero vector; give a direction, as in [0, 0, 1]");
    out.push_back(std::move(section));
  }
  return out;
}

/// Section of every line; -1 for other cells and where it is unknown, which is reported.
std::vector<int> section_of_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid,
                                  const std::vector<OwnSection>& sections) {
  std::vector<int> out(grid.types.size(), -1);
  const auto is_line = [&](std::size_t c) { return grid.types[c] == line_cell; };
  const auto names = names_on_cells(b, in, grid, "section");
  std::vector<std::string> known;
  for (const OwnSection& s : sections) known.push_back(s.name);
  if (!names) {
    const bool lines = std::ranges::find(grid.types, line_cell) != grid.types.end();
    if (lines && sections.size() != 1)
      b.wrong(in, "file",
              sections.empty()
                  ? "it has lines, but the case has no [[mesh.section]] for them"
                  : "it has lines but no cell array \"section\" that assigns a [[mesh.section]] to each: " +
                        joined(known));
    if (sections.size() == 1)
      for (std::size_t c = 0; c < out.size(); ++c) out[c] = is_line(c) ? 0 : -1;
    return out;
  }
  UnknownNames unknown;
  for (std::size_t c = 0; c < out.size(); ++c) {
    if (!is_line(c)) continue;
    const auto it = std::ranges::find(known, (*names)[c]);
    if (it == known.end())
      unknown.add((*names)[c], c);
    else
      out[c] = static_cast<int>(it - known.begin());
  }
  unknown.report(b, in, "section", "unknown [[mesh.section]]", known);
  return out;
}

std::vector<int> material_of_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid) {
  std::vector<int> out(grid.types.size(), -1);
  const auto names = names_on_cells(b, in, grid, "material");
  if (!names) {
    if (!in.given("material"))
      b.wrong(in, "file", "it has no cell array \"material\"; give it one, or give `material` for all cells");
    std::ranges::fill(out, material_of(b, in));
    return out;
  }
  std::map<std::string, int> known;
  UnknownNames unknown;
  for (std::size_t c = 0; c < out.size(); ++c) {
    const std::string& name = (*names)[c];
    const auto [it, fresh] = known.try_emplace(name, -1);
    if (fresh) it->second = material_named(b, name);
    out[c] = it->second;
    if (out[c] < 0) unknown.add(name, c);
  }
  unknown.report(b, in, "material", "no material of that name, neither built in nor in the case", material_names(b));
  return out;
}

/// Thickness of every quad [m]; NaN for other cells.
std::vector<double> thickness_of_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid, double unit) {
  std::vector<double> out(grid.types.size(), std::nan(""));
  const bool quads = std::ranges::find(grid.types, quad_cell) != grid.types.end();
  const GridArray* array = numbers_on_cells(b, in, grid, "thickness");
  if (!array) {
    if (quads && !in.given("thickness"))
      b.wrong(in, "file",
              "it has quads but no cell array \"thickness\"; give it one, or give `thickness` for all quads");
    std::ranges::fill(out, in.number_or_nan("thickness"));
    return out;
  }
  std::vector<int> wrong;
  for (std::size_t c = 0; c < out.size(); ++c) {
    if (grid.types[c] != quad_cell) continue;
    out[c] = array->numbers[c] * unit;
    if (!(out[c] > 0) || !std::isfinite(out[c])) wrong.push_back(static_cast<int>(c));
  }
  if (!wrong.empty())
    b.wrong(in, "file", "the array \"thickness\" must be greater than 0; it is not on the quads " + number_list(wrong));
  return out;
}

/// Part of every cell; without the array all are one part without a name.
std::vector<int> part_of_cells(const CaseBuilder& b, const CaseValues& in, const MeshGrid& grid, UserMesh& own) {
  std::vector<int> out(grid.types.size(), 0);
  const auto names = names_on_cells(b, in, grid, "part");
  if (!names) {
    own.parts = {""};
    return out;
  }
  std::map<std::string, int> known;
  for (std::size_t c = 0; c < out.size(); ++c) {
    const auto [it, fresh] = known.try_emplace((*names)[c], static_cast<int>(own.parts.size()));
    if (fresh) own.parts.push_back((*names)[c]);
    out[c] = it->second;
  }
  return out;
}

/// Every point array of one number per point is a set: the points where it is not zero.
std::vector<PointSet> sets_of(const MeshGrid& grid) {
  std::vector<PointSet> out;
  for (const GridArray& a : grid.point_arrays) {
    if (a.is_text || a.components != 1 || a.name.empty() || a.numbers.size() * 3 != grid.points.size()) continue;
    PointSet set;
    set.name = a.name;
    double sum = 0;
    for (std::size_t i = 0; i < a.numbers.size(); ++i) {
      if (a.numbers[i] == 0) continue;
      set.points.push_back(static_cast<int>(i));
      set.shares.push_back(a.numbers[i]);
      sum += a.numbers[i];
    }
    for (double& s : set.shares) s /= sum;
    out.push_back(std::move(set));
  }
  return out;
}

void add_cells(const MeshGrid& grid, const std::vector<int>& part, const std::vector<int>& section,
               const std::vector<int>& material, const std::vector<double>& thickness, UserMesh& own) {
  std::size_t at = 0;
  for (std::size_t c = 0; c < grid.types.size(); ++c) {
    const auto point = [&](std::size_t k) { return static_cast<int>(grid.connectivity[at + k]); };
    const int cell = static_cast<int>(c);
    if (grid.types[c] == line_cell)
      own.lines.push_back({{point(0), point(1)}, part[c], section[c], material[c], cell});
    else
      own.quads.push_back({{point(0), point(1), point(2), point(3)}, part[c], thickness[c], material[c], cell});
    at = static_cast<std::size_t>(grid.offsets[c]);
  }
}

const MeshSource& source_of(const CaseBuilder& b, const std::string& file) {
  CaseSource& source = b.out.source;
  if (!source.mesh || source.mesh->file != file)
    source.mesh = read_mesh(std::filesystem::path(source.file).parent_path() / file, file);
  b.out.text_hash = sha256(source.text_hash + source.mesh->hash);
  return *source.mesh;
}

} // namespace

void build_mesh(const CaseBuilder& b) {
  const CaseValues* in = b.root.table("mesh");
  if (!in) return;
  b.machine().own_pos = in->pos();
  const auto file = in->text("file");
  if (!file) return;
  const double unit = in->number_or("unit", 1e-3);
  const MeshGrid& grid = source_of(b, *file).grid;
  if (!check_cells(b, *in, grid)) return;
  UserMesh own;
  own.joined = in->flag_or("joined", true);
  own.sections = sections_of(b, *in);
  const std::size_t before = b.problems.all().size();
  const auto section = section_of_cells(b, *in, grid, own.sections);
  const auto material = material_of_cells(b, *in, grid);
  const auto thickness = thickness_of_cells(b, *in, grid, unit);
  const auto part = part_of_cells(b, *in, grid, own);
  if (b.problems.all().size() > before) return;
  for (std::size_t i = 0; i + 2 < grid.points.size(); i += 3)
    own.points.emplace_back(Eigen::Vector3d(grid.points[i], grid.points[i + 1], grid.points[i + 2]) * unit);
  own.sets = sets_of(grid);
  add_cells(grid, part, section, material, thickness, own);
  b.machine().own = std::move(own);
}

} // namespace bedbow
