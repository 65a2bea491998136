#include "io/units/unit.h"

#include "io/text/nearest.h"
#include "io/units/number.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <utility>
#include <vector>

namespace bedbow {

namespace {

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
const UnitAtom* find_atom(std::string_view name) {
  const auto all = unit_atoms();
  const auto it = std::ranges::find(all, name, &UnitAtom::name);
  return it == all.end() ? nullptr : &*it;
}

std::string unknown(std::string_view name) {
  std::vector<std::string> names;
  for (const UnitAtom& a : unit_atoms()) names.emplace_back(a.name);
  std::string out = "unknown unit \"" + std::string(name) + "\"";
  const std::string meant = probably_meant(name, names);
  return meant.empty() ? out : out + ", nearest is \"" + meant + "\"";
}

/// Walks over the text of a unit from left to right.
class UnitParser {
public:
  explicit UnitParser(std::string_view text)
      : rest_(text) {}

  Unit parse() {
    int sign = 1;
    skip_spaces();
    while (unit_.ok()) {
      factor(sign);
      skip_spaces();
      if (rest_.empty() || !unit_.ok()) break;
      sign = next_operator();
    }
    return std::move(unit_);
  }

private:
  void skip_spaces() {
    while (!rest_.empty() && rest_.front() == ' ') rest_.remove_prefix(1);
  }

  // A space alone also multiplies.
  int next_operator() {
    const char c = rest_.front();
    if (c == '*' || c == '/' || c == '-') {
      rest_.remove_prefix(1);
      skip_spaces();
    }
    return c == '/' ? -1 : 1;
  }

  void factor(int sign) {
    const auto end = std::ranges::find_if_not(rest_, is_letter);
    const std::string_view name(rest_.begin(), end);
    if (name.empty()) {
      unit_.trouble = "no unit at \"" + std::string(rest_) + "\"";
      return;
    }
    const UnitAtom* atom = find_atom(name);
    if (!atom) {
      unit_.trouble = unknown(name);
      return;
    }
    rest_.remove_prefix(name.size());
    const int n = sign * power();
    unit_.up *= std::pow(n > 0 ? atom->up : atom->down, std::abs(n));
    unit_.down *= std::pow(n > 0 ? atom->down : atom->up, std::abs(n));
    unit_.exponents.length += n * atom->exponents.length;
    unit_.exponents.mass += n * atom->exponents.mass;
    unit_.exponents.time += n * atom->exponents.time;
    unit_.exponents.angle += n * atom->exponents.angle;
  }

  // "^3", "^-1" or a digit directly after the name; one digit is all that occurs.
  int power() {
    std::string_view r = rest_;
    const bool caret = !r.empty() && r.front() == '^';
    if (caret) r.remove_prefix(1);
    const bool minus = caret && !r.empty() && r.front() == '-';
    if (minus) r.remove_prefix(1);
    if (r.empty() || !is_digit(r.front()) || (r.size() > 1 && is_digit(r[1]))) {
      if (caret) unit_.trouble = "no power at \"" + std::string(rest_) + "\"; write it as in \"mm^2\"";
      return 1;
    }
    rest_ = r.substr(1);
    return (r.front() - '0') * (minus ? -1 : 1);
  }

  std::string_view rest_;
  Unit unit_;
};

constexpr std::array<std::pair<std::string_view, std::string_view>, 25> spellings{{
    {"\u00b5", "u"},    {"\u03bc", "u"},    {"\u00b0", "deg"},  {"\u00b2", "^2"},   {"\u00b3", "^3"},
    {"\u2074", "^4"},   {"\u00b7", "*"},    {"\u22c5", "*"},    {"\u00d7", "*"},    {"\u2212", "-"},
    {"\u00a0", " "},    {"\u2009", " "},    {"\u202f", " "},    {"\t", " "},        {"\u00bd", " 1/2"},
    {"\u00bc", " 1/4"}, {"\u00be", " 3/4"}, {"\u215b", " 1/8"}, {"\u215c", " 3/8"}, {"\u215d", " 5/8"},
    {"\u215e", " 7/8"}, {"\u2044", "/"},    {"\u2010", "-"},    {"\u2011", "-"},    {"\u2013", "-"},
}};

} // namespace

Unit parse_unit(std::string_view text) {
  return UnitParser(text).parse();
}

std::string plain_ascii(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    if (static_cast<unsigned char>(text.front()) < 0x80 && text.front() != '\t') { // nearly every character
      out += text.front();
      text.remove_prefix(1);
      continue;
    }
    const auto* it = std::ranges::find_if(spellings, [&](const auto& s) { return text.starts_with(s.first); });
    if (it != spellings.end()) {
      out += it->second;
      text.remove_prefix(it->first.size());
    } else {
      out += text.front();
      text.remove_prefix(1);
    }
  }
  return out;
}

} // namespace bedbow
