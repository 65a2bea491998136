/// \file
/// Values of a machine that its case file need not give, to be turned one at a time: moduli and yield of built-in
/// materials, stiffness of screws that was reckoned.
#pragma once

#include "mesh/build/mesh.h"
#include "mesh/machine/machine.h"

#include <functional>
#include <set>
#include <string>
#include <vector>

namespace bedbow {

struct MachineKnob {
  std::string name; ///< "S275JR: E and G"
  double value = 0; ///< [SI]
  std::function<void(Machine&, double)> set;
};

/// E with G (the same metal, stiffer) of every material; yield, K and n of the sheet's; shear stiffness of the screws
/// that give none.
/// \param mesh the machine's. \param given names of materials that the case itself describes: left out.
std::vector<MachineKnob> machine_knobs(const Machine& machine, const Mesh& mesh, const std::set<std::string>& given);

} // namespace bedbow
