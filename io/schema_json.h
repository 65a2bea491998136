/// \file
/// The case file's description as a JSON Schema, so that editors complete and check a case while it is written.
#pragma once

#include "io/schema.h"

#include <nlohmann/json_fwd.hpp>

namespace bedbow {

/// JSON Schema, draft 2020-12, of a case file as TOML gives it: one entry under $defs for each table, doc strings as
/// descriptions. It says kind, range of bare numbers, choices, list lengths and keys due; what hangs together between
/// keys (units against dimension, names that must exist) only the reader checks.
/// Source: json-schema.org, Validation and Core, 2020-12.
nlohmann::ordered_json json_schema(const Schema& schema);

} // namespace bedbow
