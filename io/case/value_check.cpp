#include "io/case/value_check.h"

#include "io/text/nearest.h"
#include "io/units/quantity.h"
#include "mesh/piece/fastener.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

using Type = CaseNode::Type;

std::string with_g(double value) {
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%g", value);
  return buffer;
}

std::string due(const KeySpec& spec) {
  switch (spec.kind) {
  case ValueKind::quantity:
    return with_article(spec.dim) + " with its unit";
  case ValueKind::sheet:
    return "a thickness with its unit";
  case ValueKind::thread:
    return "a thread size or a diameter with its unit";
  case ValueKind::number:
    return "a bare number";
  case ValueKind::integer:
    return "a bare whole number";
  case ValueKind::boolean:
    return "true or false";
  case ValueKind::unit:
    return "a unit of " + std::string(info(spec.dim).name);
  default:
    return "a string";
  }
}

std::string example_of(const KeySpec& spec) {
  return spec.example.empty() ? "" : ", as in " + spec.key + " = " + spec.example_value();
}

std::string is_due(const KeySpec& spec) {
  return "; expected " + due(spec) + example_of(spec);
}

/// Checks the items of one value and reports problems under its path.
class ValueChecker {
public:
  ValueChecker(const KeySpec& spec, const std::string& path, ProblemList& problems)
      : spec_(spec)
      , path_(path)
      , problems_(problems) {}

  CaseValue run(const CaseNode& node) {
    out_.pos = node.pos;
    out_.node = &node;
    if (spec_.is_list())
      list(node);
    else
      item(node);
    return std::move(out_);
  }

private:
  void wrong(const CaseNode& node, const std::string& text) {
    problems_.error(node.pos.line > 0 ? node.pos : out_.pos, path_, text);
    out_.good = false;
  }

  void list(const CaseNode& node) {
    if (node.type != Type::list) return wrong(node, shown(node) + " is " + kind_of(node) + "; " + list_due() + as_in());
    const auto n = static_cast<int>(node.items.size());
    if (n < spec_.min_items || n > spec_.max_items) {
      const std::string is = n == 1 ? " item" : " items";
      return wrong(node, "the list has " + std::to_string(n) + is + "; " + list_due() + as_in());
    }
    for (const CaseNode& i : node.items) item(i);
  }

  [[nodiscard]] std::string list_due() const {
    if (spec_.min_items == spec_.max_items) return "expected a list of " + std::to_string(spec_.min_items);
    if (spec_.max_items < KeySpec::no_limit)
      return "expected a list of " + std::to_string(spec_.min_items) + " to " + std::to_string(spec_.max_items);
    return "expected a list of at least " + std::to_string(spec_.min_items);
  }

  [[nodiscard]] std::string as_in() const { return example_of(spec_); }

  void item(const CaseNode& node) {
    switch (spec_.kind) {
    case ValueKind::number:
    case ValueKind::integer:
      return bare_number(node);
    case ValueKind::boolean:
      if (node.type != Type::boolean) return wrong(node, shown(node) + " is " + kind_of(node) + is_due(spec_));
      out_.flag = node.flag;
      return;
    case ValueKind::any:
      return;
    default:
      return worded(node);
    }
  }

  // Every kind of value that is written in quotes.
  void worded(const CaseNode& node) {
    const bool dimensional =
        spec_.kind == ValueKind::quantity || spec_.kind == ValueKind::sheet || spec_.kind == ValueKind::thread;
    if (dimensional && (node.type == Type::integer || node.type == Type::number))
      return wrong(node, without_unit(node.text, spec_.dim, spec_.example));
    if (node.type != Type::text) return wrong(node, shown(node) + " is " + kind_of(node) + is_due(spec_));
    if (spec_.kind == ValueKind::quantity) return quantity(node);
    if (spec_.kind == ValueKind::sheet) return sheet(node);
    if (spec_.kind == ValueKind::thread) return thread(node);
    if (spec_.kind == ValueKind::unit) return unit(node);
    if (spec_.kind == ValueKind::choice && std::ranges::find(spec_.choices, node.text) == spec_.choices.end())
      return wrong(node, shown(node) + " is not one of " + joined(spec_.choices) + nearest_choice(node.text));
    if (spec_.kind != ValueKind::text && !usable_name(node)) return;
    if (spec_.kind == ValueKind::text && node.text.empty() && spec_.is_required)
      return wrong(node, "the string is empty" + is_due(spec_));
    out_.texts.push_back(node.text);
  }

  [[nodiscard]] std::string nearest_choice(const std::string& text) const {
    const std::string meant = probably_meant(text, spec_.choices);
    return meant.empty() ? "" : "; nearest is \"" + meant + "\"";
  }

  bool usable_name(const CaseNode& node) {
    constexpr std::size_t longest = 100;
    const std::string& name = node.text;
    const bool control = std::ranges::any_of(name, [](char c) { return static_cast<unsigned char>(c) < ' '; });
    const bool dot = spec_.kind == ValueKind::name && name.find('.') != std::string::npos && spec_.key == "name";
    if (!name.empty() && name.size() <= longest && !control && !dot) return true;
    wrong(node, shown(node) + " is not a valid name: it must not be empty, " +
                    (spec_.key == "name" ? "contain a dot, " : "") +
                    "contain a control character or exceed 100 characters");
    return false;
  }

  void quantity(const CaseNode& node) {
    const ParsedQuantity q = parse_quantity(node.text, spec_.dim, spec_.example);
    if (q.ok()) return number(node, q.value, info(spec_.dim).least);
    if (spec_.or_dim) {
      if (const ParsedQuantity other = parse_quantity(node.text, *spec_.or_dim); other.ok()) {
        out_.other_dim = true;
        return number(node, other.value, info(*spec_.or_dim).least);
      }
    }
    wrong(node, q.trouble);
  }

  void sheet(const CaseNode& node) {
    out_.gauge = parse_gauge(node.text);
    if (!out_.gauge) quantity(node);
  }

  void thread(const CaseNode& node) {
    if (const auto thread = find_thread(node.text)) {
      out_.numbers.push_back(thread->d);
      out_.texts.push_back(thread->name);
      return;
    }
    const bool like_a_thread = !node.text.empty() && (node.text.front() == 'M' || node.text.front() == 'm');
    if (like_a_thread) return wrong(node, shown(node) + " is not a valid thread size; known sizes: " + thread_names());
    quantity(node);
  }

  void unit(const CaseNode& node) {
    const Unit unit = parse_unit_of(node.text, spec_.dim);
    if (!unit.ok()) return wrong(node, unit.trouble);
    out_.numbers.push_back(unit.size());
    out_.texts.push_back(node.text);
  }

  void bare_number(const CaseNode& node) {
    const bool whole = spec_.kind == ValueKind::integer;
    if (node.type == Type::text) {
      return wrong(node, shown(node) + " is a string" + is_due(spec_));
    }
    if (node.type != Type::integer && (whole || node.type != Type::number))
      return wrong(node, shown(node) + " is " + kind_of(node) + is_due(spec_));
    if (!std::isfinite(node.number)) return wrong(node, node.text + ": a number must be finite" + as_in());
    if (whole && !node.exact) return wrong(node, node.text + " is too large");
    number(node, node.number, 0);
  }

  /// Checks a value's range. \param least the smallest positive value that counts.
  void number(const CaseNode& node, double value, double least) {
    if (spec_.range == Range::positive && !(value > 0 && value >= least))
      return wrong(node, shown(node) + " must be greater than zero" + as_in());
    if (spec_.range == Range::not_negative && value < 0)
      return wrong(node, shown(node) + " must not be negative" + as_in());
    if ((spec_.least && value < *spec_.least) || (spec_.greatest && value > *spec_.greatest)) {
      const bool bare = spec_.kind == ValueKind::number || spec_.kind == ValueKind::integer;
      const std::string unit = bare ? "" : " in SI units";
      return wrong(node, shown(node) + " is not between " + with_g(spec_.least.value_or(-HUGE_VAL)) + " and " +
                             with_g(spec_.greatest.value_or(HUGE_VAL)) + unit);
    }
    out_.numbers.push_back(value);
  }

  const KeySpec& spec_;
  const std::string& path_;
  ProblemList& problems_;
  CaseValue out_;
};

} // namespace

CaseValue check_value(const CaseNode& node, const KeySpec& spec, const std::string& path, ProblemList& problems) {
  return ValueChecker(spec, path, problems).run(node);
}

} // namespace bedbow
