/// \file
/// Names of parts in messages, and the places in a case where they stand.
#pragma once

#include "mesh/machine/machine.h"

#include <string>

namespace bedbow {

/// "post left", or "post 2" for one without a name; a name that says its kind already is left alone. \param index from
/// 0.
std::string called(JointKind kind, const std::string& name, std::size_t index);

/// "post.left", or "post.2" for one without a name. \param index from 0.
std::string joint_key(const std::string& kind, const std::string& name, std::size_t index);

/// "bed.bar.web".
std::string bar_key(BodyKind body, const Bar& bar);

} // namespace bedbow
