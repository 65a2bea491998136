/// \file
/// The version that results are stamped with.
#pragma once

#include <string>

namespace bedbow {

/// Version of this build, "major.minor.patch".
std::string version();

} // namespace bedbow
