#include "io/text/text.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace bedbow {

namespace {

/// One character removed from the front of a text.
struct Character {
  std::string_view bytes;
  std::uint32_t code = 0;
  bool valid = false;
};

/// Source of the byte patterns: RFC 3629.
Character take(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  const std::size_t length = lead < 0x80                   ? 1
                             : lead >= 0xC2 && lead < 0xE0 ? 2
                             : lead >= 0xE0 && lead < 0xF0 ? 3
                             : lead >= 0xF0 && lead < 0xF5 ? 4
                                                           : 0;
  Character broken{text.substr(0, 1), lead, false};
  if (length == 0 || text.size() < length) return broken;
  std::uint32_t code = length == 1 ? lead : lead & (0x7FU >> length);
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return broken;
    code = code << 6 | (byte(i) & 0x3FU);
  }
  const bool overlong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
  if (overlong || (code >= 0xD800 && code < 0xE000) || code > 0x10FFFF) return broken;
  return {text.substr(0, length), code, true};
}

struct Range {
  std::uint32_t from, to;
};

bool within(std::uint32_t code, const auto& ranges) {
  return std::any_of(ranges.begin(), ranges.end(), [&](const Range& r) { return code >= r.from && code <= r.to; });
}

// Only the common blocks: enough to keep columns aligned.
constexpr std::array<Range, 5> zero_width{
    {{0x300, 0x36F}, {0x1AB0, 0x1AFF}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0x200B, 0x200D}}};
constexpr std::array<Range, 9> double_width{{{0x1100, 0x115F},
                                             {0x2E80, 0xA4CF},
                                             {0xAC00, 0xD7A3},
                                             {0xF900, 0xFAFF},
                                             {0xFE30, 0xFE6F},
                                             {0xFF00, 0xFF60},
                                             {0xFFE0, 0xFFE6},
                                             {0x1F300, 0x1FAFF},
                                             {0x20000, 0x3FFFD}}};
// C0, DEL and C1 controls, line separators, and the marks that turn the direction of writing.
constexpr std::array<Range, 5> unprintable{
    {{0, 0x1F}, {0x7F, 0x9F}, {0x2028, 0x202E}, {0x2066, 0x2069}, {0x200E, 0x200F}}};

int width_of(const Character& c) {
  if (!c.valid) return 1;
  if (within(c.code, zero_width)) return 0;
  return within(c.code, double_width) ? 2 : 1;
}

} // namespace

int display_width(std::string_view text) {
  int width = 0;
  while (!text.empty()) {
    const Character c = take(text);
    width += width_of(c);
    text.remove_prefix(c.bytes.size());
  }
  return width;
}

std::string printable(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const Character c = take(text);
    if (c.valid && !within(c.code, unprintable))
      out += c.bytes;
    else
      out += '?';
    text.remove_prefix(c.bytes.size());
  }
  return out;
}

std::string pad(std::string_view text, int width, bool right) {
  const std::string space(static_cast<std::size_t>(std::max(0, width - display_width(text))), ' ');
  return right ? space + std::string(text) : std::string(text) + space;
}

std::vector<std::string> wrap(std::string_view text, int width) {
  std::vector<std::string> lines;
  std::string line;
  while (!text.empty()) {
    const std::size_t space = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, space);
    text.remove_prefix(std::min(space + 1, text.size()));
    if (word.empty()) continue;
    if (!line.empty() && display_width(line) + 1 + display_width(word) > width) {
      lines.push_back(line);
      line.clear();
    }
    if (!line.empty()) line += ' ';
    line += word;
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

std::string list_item(std::string_view text, int width, std::string_view mark) {
  const int indent = display_width(mark);
  std::string out;
  for (const std::string& line : wrap(text, width - indent)) {
    out += out.empty() ? std::string(mark) : std::string(static_cast<std::size_t>(indent), ' ');
    out += line + "\n";
  }
  return out;
}

} // namespace bedbow
