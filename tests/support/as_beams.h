/// \file
/// Cases whose bars keep their sections plane, for tests of what beam theory says.
#pragma once

#include <string>

namespace bedbow::test {

/// A case's text with `model = "beam"` in every [[bed.bar]], [[clamp.bar]] and [[apron.bar]] that gives no model.
std::string as_beams(const std::string& text);

/// The text of cases/NAME/case.toml.
std::string shipped_case(const std::string& name);

} // namespace bedbow::test
