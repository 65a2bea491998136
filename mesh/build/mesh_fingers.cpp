// Loose pieces that make the nose: each a short cantilever from the carrying bar, free of its neighbours; a plate of
// its own where that bar is one.
#include "mesh/build/mesh_builder.h"
#include "mesh/build/places.h"

#include <algorithm>
#include <cmath>

namespace bedbow::mesher {

namespace {

/// Stiffness of the springs that fix a root, relative to a cube of the finger's material of its width.
constexpr double far_stiffer = 1000;

/// Shape of a finger seen along its axis: width across the bend line, thickness upright.
Shape finger_shape(double width, double thickness) {
  Shape s;
  s.width = width;
  s.height = thickness;
  return s;
}

Ref carrier_of(const Builder& b) {
  return {Ref::Kind::bar, BodyKind::clamp, b.machine.nose.bar};
}

/// Joins a node of a root to the carrying bar: rigidly, except for the root's stiffness against tipping about x.
void hold_root(Builder& b, int node, double width, std::optional<double> about_x) {
  const Eigen::Vector3d at = b.mesh.nodes[node].x;
  const double k = far_stiffer * b.material(b.machine.fingers->material).E * width;
  Joint j;
  j.kind = JointKind::weld;
  j.name = "finger";
  j.a = place_on_bar(b.machine, b.mesh, carrier_of(b), at);
  j.b = {{PlaceTerm::on_arm(node, 1, Eigen::Vector3d::Zero())}, at, Frame::fixed};
  const double turn = k * width * width;
  j.stiffness = {k, k, k, about_x.value_or(turn), turn, turn};
  b.mesh.joints.push_back(std::move(j));
}

void add_beam(Builder& b, int from, int to, int section) {
  BeamElement e;
  e.nodes = {from, to};
  e.length = (b.mesh.nodes[to].x - b.mesh.nodes[from].x).norm();
  // From root to tip along -y; the section's width lies along x, its height along z.
  e.axes << 0, -1, 0, 1, 0, 0, 0, 0, 1;
  e.section = section;
  e.material = b.machine.fingers->material;
  e.owner = carrier_of(b);
  b.mesh.beams.push_back(e);
}

/// Where the nodes of a finger lie along y: edge, middle of the land, root.
struct Depth {
  double tip, pad, root, z;
};

FingerLayout beam_finger(Builder& b, const Depth& at, double start, double width) {
  const Fingers& f = *b.machine.fingers;
  const double x = start + width / 2;
  const int section = b.add_section(finger_shape(width, f.thickness), b.material(f.material).nu);
  FingerLayout out;
  out.from = start;
  out.to = start + width;
  out.root = b.add_node({x, at.root, at.z}, Frame::fixed);
  out.pad = b.add_node({x, at.pad, at.z}, Frame::fixed);
  out.tip = b.add_node({x, at.tip, at.z}, Frame::fixed);
  out.first_element = static_cast<int>(b.mesh.beams.size());
  add_beam(b, out.root, out.pad, section);
  add_beam(b, out.pad, out.tip, section);
  if (f.root_stiffness) {
    hold_root(b, out.root, width, f.root_stiffness);
  } else { // clamped to the section of the carrying bar at the finger's middle
    const Place place = place_on_bar(b.machine, b.mesh, carrier_of(b), {x, at.root, at.z});
    b.mesh.rigid_links.push_back({main_node(place), out.root});
  }
  return out;
}

/// Marks with even divisions no longer than `size` between them, at least `least` each.
std::vector<double> divided(const std::vector<double>& marks, double size, int least) {
  std::vector<double> out{marks.front()};
  for (std::size_t i = 1; i < marks.size(); ++i) {
    const double run = marks[i] - marks[i - 1];
    const int n = std::max(least, static_cast<int>(std::ceil(run / size - 1e-9)));
    for (int k = 1; k <= n; ++k) out.push_back(marks[i - 1] + run * k / n);
  }
  return out;
}

void add_shells(Builder& b, const FingerLayout& f) {
  const std::size_t n = f.x.size();
  for (std::size_t r = 0; r + 1 < f.y.size(); ++r)
    for (std::size_t i = 0; i + 1 < n; ++i) {
      ShellElement e;
      e.nodes = {f.nodes[r * n + i], f.nodes[r * n + i + 1], f.nodes[(r + 1) * n + i + 1], f.nodes[(r + 1) * n + i]};
      e.thickness = b.machine.fingers->thickness;
      e.material = b.machine.fingers->material;
      e.owner = carrier_of(b);
      b.mesh.shells.push_back(e);
    }
}

FingerLayout plate_finger(Builder& b, const Depth& at, double start, double width) {
  const double size = b.machine.solve.element_size;
  FingerLayout f;
  f.from = start;
  f.to = start + width;
  f.x = divided({start, start + width / 2, start + width}, size, 1);
  f.y = divided({at.tip, at.pad, at.root}, size, 2);
  for (double y : f.y)
    for (double x : f.x) f.nodes.push_back(b.add_node({x, y, at.z}, Frame::fixed));
  f.first_element = static_cast<int>(b.mesh.shells.size());
  add_shells(b, f);
  const std::size_t n = f.x.size();
  for (std::size_t i = 0; i < n; ++i) { // each node of the root for its share of the width
    const double share = ((i + 1 < n ? f.x[i + 1] : f.x[i]) - (i > 0 ? f.x[i - 1] : f.x[i])) / 2;
    std::optional<double> about_x = b.machine.fingers->root_stiffness;
    if (about_x) *about_x *= share / width;
    hold_root(b, f.nodes[(f.y.size() - 1) * n + i], share, about_x);
  }
  return f;
}

} // namespace

void mesh_fingers(Builder& b) {
  if (!b.machine.fingers) return;
  const Fingers& f = *b.machine.fingers;
  const Nose& nose = b.machine.nose;
  const bool plate = b.machine.bar(carrier_of(b)).model == BarModel::plate;
  Depth at;
  at.tip = nose.setback;
  at.root = nose.setback + f.reach;
  at.pad = std::min(nose.setback + nose.land / 2, (at.tip + at.root) / 2);
  at.z = (b.machine.sheet ? b.machine.sheet->thickness : 0) + f.thickness / 2;
  for (std::size_t i = 0; i < f.widths.size(); ++i)
    b.mesh.fingers.push_back(plate ? plate_finger(b, at, f.starts[i], f.widths[i])
                                   : beam_finger(b, at, f.starts[i], f.widths[i]));
}

} // namespace bedbow::mesher
