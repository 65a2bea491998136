/// \file
/// A mode shape in a builder's words: which body moves most, along or about which axis, and where the strain energy is.
#pragma once

#include "solver/modes/modes.h"

#include <map>

namespace bedbow {

/// A unit that is named as one in modes: "bed", "clamp", "apron", "member rod", "panel cheek".
std::string body_name(const Machine& machine, const Ref& owner);

/// Masses of the mesh's nodes, body by body, as weights of displacements.
struct BodyMass {
  std::string name;
  std::vector<int> nodes;
  std::vector<double> mass; ///< by node of `nodes` [kg]
};
std::vector<BodyMass> body_masses(const Model& model);

/// "apron turns about x, clamp bends along z": the body with most kinetic energy, and each further one with a
/// quarter of it. \param motion by node, axes of its frame. \param strain its strain_shares. \param angle of
/// the apron: global axes are named.
std::string describe_shape(const Model& model, const std::vector<BodyMass>& bodies, const std::vector<Vector6d>& motion,
                           const std::map<std::string, double>& strain, double angle);

/// Share of the strain energy by body, "joints" for their springs and the screws; sums to 1. Empty where nothing is
/// strained. \param motions of each shape, by node. \return one map per shape.
std::vector<std::map<std::string, double>> strain_shares(const Model& model, const JointState& state,
                                                         const std::vector<std::vector<Vector6d>>& motions);

} // namespace bedbow
