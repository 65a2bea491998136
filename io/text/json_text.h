/// \file
/// JSON as readable text.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace bedbow {

/// Objects indented by one space a level, arrays of plain values on one line, keys in their order, numbers in the
/// shortest form that reads back the same, NaN and infinity as null, broken UTF-8 replaced. Ends with a line break.
std::string json_text(const nlohmann::ordered_json& value);

} // namespace bedbow
