/// \file
/// The case file's description as a JSON Schema, so that editors complete and check a case while it is written.
#pragma once

#include "io/schema/schema.h"

#include <nlohmann/json_fwd.hpp>

namespace bedbow {

/// JSON Schema, draft 2020-12, of a case file as TOML gives it: one entry under $defs for each table, doc strings as
/// descriptions. It says kind, sign, range of bare numbers, choices, list lengths, keys due and an accepted example;
/// what hangs together between keys (names that must exist), units against their dimension and ranges of quantities
/// only the reader checks. Whatever the reader takes, the schema takes. Source: json-schema.org, Validation and Core,
/// 2020-12.
nlohmann::ordered_json json_schema(const Schema& schema);

} // namespace bedbow
