/// \file
/// The small XML file with which viewers read a series of .vtu files as steps of one data set.
#pragma once

#include <string>
#include <vector>

namespace bedbow {

struct PvdEntry {
  std::string file; ///< beside the .pvd
  std::string name; ///< of the step
};

/// A .pvd whose time is the number of the step, from 0. \param comment put at its head; none where empty.
std::string pvd(const std::vector<PvdEntry>& entries, const std::string& comment = {});

} // namespace bedbow
