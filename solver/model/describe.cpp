#include "solver/model/describe.h"

#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

const char* const axis_name[3] = {"x", "y", "z"};

} // namespace

std::string describe_rigid(const Substructure& comp, const Vector6d& v, bool can) {
  const Eigen::Vector3d t = v.head<3>();
  const Eigen::Vector3d w = v.tail<3>();
  // Scale of the rotation: displacements of far points, about half a part's size away.
  Eigen::Index k = 0;
  const double slide = t.cwiseAbs().maxCoeff(&k);
  Eigen::Index a = 0;
  const double turn = w.cwiseAbs().maxCoeff(&a);
  double reach = 0;
  for (Eigen::Index i = 0; i < comp.rigid.cols(); ++i) {
    const double r = comp.rigid.col(i).tail<3>().cwiseAbs().maxCoeff();
    if (r > 0) reach = std::max(reach, 1 / r);
  }
  if (turn * std::max(reach, 1e-3) > slide)
    return comp.name + (can ? " can turn about " : " turns about ") + axis_name[a];
  return comp.name + (can ? " can slide along " : " slides along ") + axis_name[k];
}

std::string describe_movement(const Model& m, const Eigen::VectorXd& rigid_amplitudes, bool can) {
  double most = 0;
  std::vector<std::pair<double, std::string>> parts;
  for (std::size_t c = 0; c < m.map.substructures.size(); ++c) {
    const Substructure& comp = m.map.substructures[c];
    if (comp.rigid.cols() == 0) continue;
    const Eigen::VectorXd own = rigid_amplitudes.segment(m.factored.rigid_start[c], comp.rigid.cols());
    const double size = own.cwiseAbs().maxCoeff();
    most = std::max(most, size);
    parts.emplace_back(size, describe_rigid(comp, comp.rigid * own, can));
  }
  std::string out;
  for (const auto& [size, text] : parts)
    if (size > 0.05 * most) out += (out.empty() ? "" : " and ") + text;
  return out.empty() ? "a part can move" : out;
}

std::string describe_mechanism(const SubstructureMechanism& m) {
  char text[160];
  std::snprintf(text, sizeof text, " can %s %s at (%.4g, %.4g, %.4g) mm without bending anything",
                m.dof < 3 ? "move along" : "turn about", axis_name[m.dof % 3], m.at.x() * 1e3, m.at.y() * 1e3,
                m.at.z() * 1e3);
  return m.part + text + ": a release or a missing joint leaves it free";
}

} // namespace bedbow
