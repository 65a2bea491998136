/// \file
/// A mesh supplied by the user: points, lines that are beams, quads that are shells, in parts to which joints and loads
/// refer by name, and sets of points. It supplements bars, members and panels and may be joined to them. SI units.
#pragma once

#include "mesh/piece/section.h"

#include <Eigen/Core>

#include <array>
#include <limits>
#include <string>
#include <vector>

namespace bedbow {

/// Section of the lines that name it.
struct OwnSection {
  std::string name;
  Shape shape;
  /// Direction of the section's height; NaN: z, or y for a line along z.
  Eigen::Vector3d up = Eigen::Vector3d::Constant(std::numeric_limits<double>::quiet_NaN());
};

/// Beam between two points.
struct OwnLine {
  std::array<int, 2> points{};
  int part = 0;    ///< index into UserMesh::parts
  int section = 0; ///< index into UserMesh::sections
  int material = 0;
  int cell = 0; ///< its number in the file, from 0
};

/// Shell between four points in order around it.
struct OwnQuad {
  std::array<int, 4> points{};
  int part = 0;
  double thickness = 0; ///< [m]
  int material = 0;
  int cell = 0; ///< its number in the file, from 0
};

/// Points to which holds and loads refer by name, each with its share of a load; shares add up to 1.
struct PointSet {
  std::string name;
  std::vector<int> points;
  std::vector<double> shares; ///< same length as points
};

struct UserMesh {
  std::vector<Eigen::Vector3d> points; ///< [m]
  std::vector<std::string> parts;      ///< names; one without a name is the mesh as a whole
  std::vector<OwnSection> sections;
  std::vector<OwnLine> lines;
  std::vector<OwnQuad> quads;
  std::vector<PointSet> sets;
  bool joined = true; ///< points at one place, and points on a bar, move together
  [[nodiscard]] bool present() const { return !lines.empty() || !quads.empty(); }
  /// Whether a cell uses each point; the others are ignored.
  [[nodiscard]] std::vector<bool> used() const;
};

/// The point of a part nearest to a place.
struct UserMeshNearest {
  std::vector<int> points;     ///< of the nearest cell
  std::vector<double> weights; ///< of its points at the spot nearest to the place; they add up to 1
  double distance = std::numeric_limits<double>::infinity(); ///< from the place to that spot [m]
};

/// The spot of a line between two points that is nearest to a place. \return points 0 and 1.
UserMeshNearest nearest_on_line(const std::array<Eigen::Vector3d, 2>& ends, const Eigen::Vector3d& at);

/// The spot of a quad that is nearest to a place, by its bilinear shape functions. \return points 0 to 3.
UserMeshNearest nearest_on_quad(const std::array<Eigen::Vector3d, 4>& corners, const Eigen::Vector3d& at);

/// The spot of a part that is nearest to a place. \return points of the mesh; none where the part has no cells.
UserMeshNearest nearest_on_part(const UserMesh& mesh, int part, const Eigen::Vector3d& at);

/// The quad of a part that is nearest to a place.
struct UserMeshFace {
  const OwnQuad* quad = nullptr;                    ///< none where the part has no quads
  Eigen::Vector3d spot = Eigen::Vector3d::Zero();   ///< of its mid-surface, nearest to the place [m]
  Eigen::Vector3d normal = Eigen::Vector3d::Zero(); ///< unit
};
UserMeshFace nearest_face(const UserMesh& mesh, int part, const Eigen::Vector3d& at);

} // namespace bedbow
