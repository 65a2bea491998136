/// \file
/// The case file's description with what plugins brought.
#pragma once

#include "io/schema/schema.h"
#include "solver/registry/registries.h"

namespace bedbow {

/// The schema with the sizes of brought section shapes as keys, and the names of all that was brought in the
/// descriptions of the keys that name it.
Schema with_brought(Schema schema, const Registries& registries);

} // namespace bedbow
