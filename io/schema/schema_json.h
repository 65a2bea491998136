/// \file
/// The case file's description as a JSON Schema, so that editors complete and check a case while it is written.
#pragma once

#include "io/schema/schema.h"

#include <nlohmann/json_fwd.hpp>

namespace bedbow {

/// JSON Schema, draft 2020-12, of a case file as TOML gives it: one entry under $defs for each table, doc strings as
/// descriptions. It says kind, sign, range of bare numbers, choices, list lengths, required keys and an accepted
/// example; relations between keys (names that must exist), units against their dimension and ranges of quantities are
/// checked by the reader only. The schema accepts whatever the reader accepts. Source: json-schema.org, Validation and
/// Core, 2020-12.
nlohmann::ordered_json json_schema(const Schema& schema);

} // namespace bedbow
