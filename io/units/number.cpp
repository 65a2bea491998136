#include "io/units/number.h"

#include <charconv>
#include <cmath>

namespace bedbow {

namespace {

void skip_spaces(std::string_view& s) {
  while (!s.empty() && s.front() == ' ') s.remove_prefix(1);
}

std::size_t digits_at(std::string_view s) {
  std::size_t n = 0;
  while (n < s.size() && is_digit(s[n])) ++n;
  return n;
}

/// A fraction "7/16" at the beginning of `s`: numerator and denominator as digits.
struct Fraction {
  std::string_view up, down;
  [[nodiscard]] std::size_t size() const { return up.empty() ? 0 : up.size() + 1 + down.size(); }
};

Fraction fraction_at(std::string_view s) {
  const std::size_t up = digits_at(s);
  if (up == 0 || up >= s.size() || s[up] != '/') return {};
  const std::size_t down = digits_at(s.substr(up + 1));
  if (down == 0) return {};
  return {s.substr(0, up), s.substr(up + 1, down)};
}

/// Length of a plain decimal number without sign: "12", "12.5", ".5", "1e-3".
std::size_t decimal_at(std::string_view s) {
  std::size_t n = digits_at(s);
  std::size_t digits = n;
  if (n < s.size() && s[n] == '.') {
    const std::size_t decimals = digits_at(s.substr(n + 1));
    digits += decimals;
    n += 1 + decimals;
  }
  if (digits == 0) return 0;
  if (n < s.size() && (s[n] == 'e' || s[n] == 'E')) {
    std::size_t e = n + 1;
    if (e < s.size() && (s[e] == '+' || s[e] == '-')) ++e;
    if (const std::size_t exponent = digits_at(s.substr(e))) n = e + exponent;
  }
  return n;
}

bool to_double(std::string_view s, double& out) {
  const auto result = std::from_chars(s.data(), s.data() + s.size(), out);
  return result.ec == std::errc() && result.ptr == s.data() + s.size() && std::isfinite(out);
}

std::string in_quotes(std::string_view s) {
  return "\"" + std::string(s) + "\"";
}

/// Value of a fraction; sets `trouble` where it has none.
double value_of(const Fraction& f, std::string& trouble) {
  double up = 0, down = 0;
  if (!to_double(f.up, up) || !to_double(f.down, down)) {
    trouble = "the fraction has too many digits";
    return 0;
  }
  if (down == 0) {
    trouble = "the fraction has a zero denominator";
    return 0;
  }
  return up / down;
}

/// The fraction of a mixed number after its whole part: " 7/16" or "-1/2". Advances `rest` past it.
double fraction_behind(std::string_view& rest, std::string& trouble) {
  std::string_view r = rest;
  if (r.empty() || (r.front() != ' ' && r.front() != '-')) return 0;
  const char separator = r.front();
  r.remove_prefix(1);
  if (separator == ' ') skip_spaces(r);
  const Fraction f = fraction_at(r);
  if (f.size() == 0) return 0;
  const double part = value_of(f, trouble);
  if (trouble.empty() && part >= 1) trouble = "the fraction of a mixed number must be less than one";
  rest = r.substr(f.size());
  return part;
}

} // namespace

LeadingNumber leading_number(std::string_view text) {
  LeadingNumber out;
  skip_spaces(text);
  const bool minus = text.starts_with('-');
  if (minus || text.starts_with('+')) text.remove_prefix(1);
  skip_spaces(text);

  if (const Fraction f = fraction_at(text); f.size() > 0) {
    out.value = value_of(f, out.trouble);
    out.rest = text.substr(f.size());
  } else {
    const std::size_t n = decimal_at(text);
    if (n == 0) {
      const std::string_view word = text.substr(0, 3);
      const bool special = word == "nan" || word == "inf" || word == "NaN" || word == "Inf" || word == "INF";
      out.trouble = special ? "a number must be finite" : "it does not begin with a number";
      return out;
    }
    if (!to_double(text.substr(0, n), out.value))
      out.trouble = "the number " + in_quotes(text.substr(0, n).substr(0, 40)) + " is too large or too small";
    out.rest = text.substr(n);
    if (digits_at(text) == n && out.ok()) out.value += fraction_behind(out.rest, out.trouble);
  }
  if (out.ok() && (out.rest.starts_with('/') || out.rest.starts_with('.')))
    out.trouble = "numerator and denominator must be whole numbers, as in \"5/8\"";
  if (out.ok() && out.rest.size() > 1 && out.rest.front() == ',' && is_digit(out.rest[1]))
    out.trouble = "decimals take a point, and thousands no separator";
  if (minus) out.value = -out.value;
  skip_spaces(out.rest);
  return out;
}

} // namespace bedbow
