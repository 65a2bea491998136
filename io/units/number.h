/// \file
/// Numbers as written in workshops: decimals, fractions and mixed numbers.
#pragma once

#include <string>
#include <string_view>

namespace bedbow {

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// A number at the beginning of a text, or what is wrong with it.
struct LeadingNumber {
  double value = 0;
  std::string_view rest; ///< what follows it, without leading spaces
  std::string trouble;   ///< empty when it was understood
  [[nodiscard]] bool ok() const { return trouble.empty(); }
};

/// Reads "2.5", "-1e-3", "5/8", "35 7/16" or "1-1/2" (a mixed number) from the beginning of a text. The sign of a mixed
/// number covers both of its parts. Refused: nan and inf, numbers too large or too small for a double, a fraction
/// over zero or of decimals, and a mixed number whose fraction is not less than one.
/// \param text in ASCII, see plain_ascii.
LeadingNumber leading_number(std::string_view text);

} // namespace bedbow
