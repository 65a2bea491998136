/// \file
/// What a figure measures, for everybody who words it or writes it in a unit.
#pragma once

namespace bedbow {

enum class Quantity { ratio, length, angle, force, moment, stress };

} // namespace bedbow
