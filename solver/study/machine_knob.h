/// \file
/// Values of a machine that its case file need not give, to be varied one at a time: moduli and yield of built-in
/// materials, calculated stiffness of screws.
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

/// E with G (the same metal, stiffer) of every material; yield, K and n of the sheet's; calculated shear stiffness of
/// screws.
/// \param mesh the machine's. \param given names of materials that the case itself defines: excluded.
std::vector<MachineKnob> machine_knobs(const Machine& machine, const Mesh& mesh, const std::set<std::string>& given);

} // namespace bedbow
