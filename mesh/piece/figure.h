/// \file
/// What a computed or limited number is of, so that it can be shown in the units asked for.
#pragma once

namespace bedbow {

enum class FigureKind { ratio, length, angle, force };

} // namespace bedbow
