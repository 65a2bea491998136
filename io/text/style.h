/// \file
/// Colour and weight on a terminal, and nothing elsewhere. The meaning never depends on colour alone.
#pragma once

#include <string>
#include <string_view>

namespace bedbow {

/// Wraps text in ANSI (ECMA-48) sequences, or leaves it plain.
class Style {
public:
  explicit Style(bool colour = false)
      : colour_(colour) {}
  [[nodiscard]] std::string bold(std::string_view text) const { return wrapped("1", text); }
  [[nodiscard]] std::string good(std::string_view text) const { return wrapped("32", text); }
  [[nodiscard]] std::string bad(std::string_view text) const { return wrapped("1;31", text); }
  [[nodiscard]] bool colour() const { return colour_; }

private:
  [[nodiscard]] std::string wrapped(std::string_view code, std::string_view text) const {
    if (!colour_) return std::string(text);
    return "\033[" + std::string(code) + "m" + std::string(text) + "\033[0m";
  }
  bool colour_;
};

/// Colour when the descriptor is a terminal that can show it, and NO_COLOR (any non-empty value) is not set.
/// \param descriptor 1 for standard output, 2 for standard error.
Style style_for(int descriptor);

} // namespace bedbow
