/// \file
/// The case file's schema with the additions of plugins.
#pragma once

#include "io/schema/schema.h"
#include "solver/registry/registries.h"

namespace bedbow {

/// The schema with the sizes of plugin section shapes as keys, and the names of plugin entries in the descriptions of
/// the keys that refer to them.
Schema with_brought(Schema schema, const Registries& registries);

} // namespace bedbow
