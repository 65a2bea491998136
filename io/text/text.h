/// \file
/// Text for terminals: display width, wrapping, and sanitising of foreign text.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Columns that UTF-8 text takes on a terminal: combining marks none, East Asian wide characters and pictographs two,
/// everything else (also each byte that is not UTF-8) one.
int display_width(std::string_view text);

/// The text with control characters, broken UTF-8 and marks that turn the writing direction each replaced by '?', so
/// that a title or name from a case file can't steer the terminal.
std::string printable(std::string_view text);

/// Padded with spaces to a display width; longer text is left as it is. \param right text to the right end.
std::string pad(std::string_view text, int width, bool right = false);

/// Lines of at most `width` columns, broken at spaces. A word longer than that gets a line of its own.
/// \param text one paragraph without line breaks.
std::vector<std::string> wrap(std::string_view text, int width);

/// One paragraph as an item of a list: "- first line", further lines indented under its first word.
std::string list_item(std::string_view text, int width, std::string_view mark = "- ");

} // namespace bedbow
