#include "mesh/build/mesher.h"

#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"
#include "mesh/build/seats.h"
#include "mesh/build/stations.h"
#include "mesh/build/strips.h"
#include "mesh/build/welded_sections.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace mesher {

void lay_out_bars(Builder& b) {
  for (BodyKind kind : all_bodies) {
    const Body& body = b.machine.body(kind);
    for (std::size_t i = 0; i < body.bars.size(); ++i) {
      BarLayout l;
      l.owner = {Ref::Kind::bar, kind, static_cast<int>(i)};
      l.section = b.add_section(body.bars[i].shape, b.material(body.bars[i].material).nu);
      b.mesh.layouts.push_back(std::move(l));
    }
  }
}

namespace {

void mesh_beam_bar(Builder& b, BarLayout& l, const Bar& bar, Frame frame) {
  for (double x : l.stations) l.nodes.push_back(b.add_node({x, bar.at.x(), bar.at.y()}, frame));
  l.first_element = static_cast<int>(b.mesh.beams.size());
  for (std::size_t i = 0; i + 1 < l.stations.size(); ++i) {
    BeamElement e;
    e.nodes = {l.nodes[i], l.nodes[i + 1]};
    e.length = l.stations[i + 1] - l.stations[i];
    e.section = l.section;
    e.material = bar.material;
    e.owner = l.owner;
    b.mesh.beams.push_back(e);
  }
}

/// Rows of nodes across a strip: the required ones, and even divisions between them.
std::vector<double> make_rows(double lower, double upper, std::vector<double> wanted, double size) {
  // Rows closer to each other than a fifth of an element would make slivers, and a place between rows is carried
  // by both anyway.
  std::erase_if(wanted, [&](double v) { return v < lower + size / 5 || v > upper - size / 5; });
  std::sort(wanted.begin(), wanted.end());
  std::vector<double> marks = {lower};
  for (double v : wanted)
    if (v - marks.back() > size / 5) marks.push_back(v);
  marks.push_back(upper);
  std::vector<double> rows = {lower};
  const double step = std::min(size, (upper - lower) / 4);
  for (std::size_t k = 0; k + 1 < marks.size(); ++k) {
    const int n = std::max(1, static_cast<int>(std::ceil((marks[k + 1] - marks[k]) / step - 1e-9)));
    for (int i = 1; i <= n; ++i) rows.push_back(marks[k] + (marks[k + 1] - marks[k]) * i / n);
  }
  return rows;
}

void mesh_plate_bar(Builder& b, BarLayout& l, const Bar& bar, Frame frame) {
  if (bar.shape.kind != "rectangle" || bar.shape.turn != 0)
    throw std::invalid_argument(b.machine.name_of(l.owner) +
                                ": model = \"plate\" needs a rectangle that is not turned");
  l.standing = bar.shape.height > bar.shape.width;
  const double depth = l.standing ? bar.shape.height : bar.shape.width;
  const double thickness = l.standing ? bar.shape.width : bar.shape.height;
  l.across = make_rows(-depth / 2, depth / 2, seat_rows(b, l), b.machine.solve.element_size);
  const std::size_t n = l.stations.size();
  for (double c : l.across)
    for (double x : l.stations)
      l.nodes.push_back(l.standing ? b.add_node({x, bar.at.x(), bar.at.y() + c}, frame)
                                   : b.add_node({x, bar.at.x() + c, bar.at.y()}, frame));
  l.first_element = static_cast<int>(b.mesh.shells.size());
  for (std::size_t r = 0; r + 1 < l.across.size(); ++r)
    for (std::size_t i = 0; i + 1 < n; ++i) {
      ShellElement e;
      e.nodes = {l.nodes[r * n + i], l.nodes[r * n + i + 1], l.nodes[(r + 1) * n + i + 1], l.nodes[(r + 1) * n + i]};
      e.thickness = thickness;
      e.material = bar.material;
      e.owner = l.owner;
      b.mesh.shells.push_back(e);
    }
}

} // namespace

void mesh_bars(Builder& b) {
  for (BarLayout& l : b.mesh.layouts) {
    if (l.owner.kind != Ref::Kind::bar) continue;
    const Bar& bar = b.machine.bar(l.owner);
    for (double x : b.mesh.stations)
      if (x >= bar.start - same_place && x <= bar.end() + same_place) l.stations.push_back(x);
    const Frame frame = l.owner.body == BodyKind::apron ? Frame::apron : Frame::fixed;
    if (bar.model == BarModel::plate) {
      mesh_plate_bar(b, l, bar, frame);
      continue;
    }
    mesh_beam_bar(b, l, bar, frame);
    if (bends_across(b.machine, bar)) add_strips(b, l);
  }
}

} // namespace mesher

Mesh make_mesh(const Machine& machine, const Registry<ShapeEntry>& shapes, std::span<const HeldSpan> sheets) {
  mesher::Builder b{machine, shapes, {}};
  mesher::lay_out_bars(b);
  std::vector<double> wanted = mesher::structure_stations(b);
  for (double x : mesher::seat_stations(b)) wanted.push_back(x);
  for (const HeldSpan& s : sheets) wanted.insert(wanted.end(), {s.from, s.to});
  b.mesh.stations = make_stations(machine, wanted);
  mesher::mesh_bars(b);
  if (machine.sheet)
    for (double x : b.mesh.stations)
      if (x >= machine.sheet->left() - same_place && x <= machine.sheet->right() + same_place)
        b.mesh.bend_stations.push_back(x);
  mesher::mesh_structure(b);
  mesher::mesh_fingers(b);
  mesher::mesh_joints(b);
  measure_welded_sections(machine, machine.welds, b.mesh);
  mesher::turn_hung_parts(b);
  mesher::mesh_contacts(b);
  mesher::mesh_pads(b, sheets);
  return std::move(b.mesh);
}

} // namespace bedbow
