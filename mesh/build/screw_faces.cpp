#include "mesh/build/screw_faces.h"

#include "mesh/build/places.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bedbow {

namespace {

const Bar& bar_of(const Machine& machine, const Screws& s) {
  for (const Ref& r : s.joins)
    if (r.kind == Ref::Kind::bar) return machine.bar(r);
  throw std::invalid_argument("a row of screws without a bar");
}

/// The face of a part of the user's mesh at the middle of the row.
UserMeshFace face_of(const Machine& machine, const Screws& s, const Ref& part) {
  const double x = s.x.empty() ? 0 : s.x[s.x.size() / 2];
  const UserMeshFace face = nearest_face(machine.own, part.index, screw_place(bar_of(machine, s), s, x));
  if (!face.quad) throw std::invalid_argument("a row of screws on a part of the mesh without quads");
  return face;
}

} // namespace

Eigen::Vector3d screw_place(const Bar& bar, const Screws& screws, double x) {
  const auto given = [](double value, double otherwise) { return std::isfinite(value) ? value : otherwise; };
  return {x, given(screws.at.y(), bar.at.x()), given(screws.at.z(), bar.at.y())};
}

ScrewFaces screw_faces(const Machine& machine, const Mesh& mesh, const Screws& s) {
  ScrewFaces out;
  std::array<BarBox, 2> box;
  std::array<const OwnQuad*, 2> quads{};
  int faced = -1; // which axis quads face
  for (std::size_t i = 0; i < 2; ++i) {
    const Ref& r = s.joins[i];
    if (r.kind == Ref::Kind::bar) {
      box[i] = box_of(machine, mesh, r);
      out.side[i].material = machine.bar(r).material;
    } else if (r.kind == Ref::Kind::own) {
      const UserMeshFace face = face_of(machine, s, r);
      faced = std::abs(face.normal.y()) > std::abs(face.normal.z()) ? 0 : 1;
      // Across its thickness the plate has its own extent; along its faces it extends beyond any bar.
      box[i] = {Eigen::Vector2d::Constant(-1e3), Eigen::Vector2d::Constant(1e3)};
      box[i].lower[faced] = face.spot[faced + 1] - face.quad->thickness / 2;
      box[i].upper[faced] = face.spot[faced + 1] + face.quad->thickness / 2;
      quads[i] = face.quad;
      out.side[i].material = face.quad->material;
    } else {
      throw std::invalid_argument("a row of screws on a part that is neither a bar nor a mesh");
    }
  }
  const Eigen::Vector2d overlap = box[0].upper.cwiseMin(box[1].upper) - box[0].lower.cwiseMax(box[1].lower);
  out.normal = faced >= 0 ? faced + 1 : overlap[0] < overlap[1] ? 1 : 2; // bars overlap least across their faces
  const int k = out.normal - 1;
  out.swapped = box[0].lower[k] + box[0].upper[k] > box[1].lower[k] + box[1].upper[k];
  out.width = std::max(overlap[1 - k], 0.0);
  // Overlap and gap have the same inner ends.
  out.meeting = (std::max(box[0].lower[k], box[1].lower[k]) + std::min(box[0].upper[k], box[1].upper[k])) / 2;
  for (std::size_t i = 0; i < 2; ++i) {
    out.side[i].lower = box[i].lower[k];
    out.side[i].upper = box[i].upper[k];
    const double wall = quads[i] ? 0 : machine.bar(s.joins[i]).shape.wall;
    out.side[i].wall = wall > 0 ? wall : out.side[i].thickness();
  }
  return out;
}

} // namespace bedbow
