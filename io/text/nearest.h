/// \file
/// The name that was probably meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Edits (insert, delete, replace a byte, swap two neighbours) that turn one text into the other; letters that differ
/// by case alone do not count. Source: optimal string alignment, Damerau 1964, Levenshtein 1966.
int edit_distance(std::string_view a, std::string_view b);

/// The candidate with the fewest edits, the first of several; empty when there are no candidates.
std::string nearest(std::string_view given, const std::vector<std::string>& candidates);

/// Like `nearest`, but empty when the nearest is not near: more than half of the longer text would have to change.
std::string probably_meant(std::string_view given, const std::vector<std::string>& candidates);

/// "a, b, c".
std::string joined(const std::vector<std::string>& words);

} // namespace bedbow
