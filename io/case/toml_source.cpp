#include "io/case/toml_source.h"

#include <toml++/toml.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace bedbow {

namespace {

SourcePos pos_of(const toml::source_region& region) {
  return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

template <class T> std::string written(T value) {
  char buffer[32];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return {buffer, end};
}

CaseNode convert(const toml::node& node);

void convert_table(const toml::table& table, CaseNode& out) {
  for (auto&& [key, value] : table)
    out.entries.push_back({std::string(key.str()), pos_of(key.source()), convert(value)});
  std::ranges::stable_sort(out.entries, {}, [](const CaseEntry& e) { return std::pair(e.pos.line, e.pos.column); });
}

void convert_integer(std::int64_t value, CaseNode& out) {
  out.type = CaseNode::Type::integer;
  out.number = static_cast<double>(value);
  out.exact = std::abs(out.number) <= 9007199254740992.0; // 2^53
  out.text = written(value);
}

CaseNode convert(const toml::node& node) {
  CaseNode out;
  out.pos = pos_of(node.source());
  if (const auto* table = node.as_table()) {
    out.type = CaseNode::Type::table;
    convert_table(*table, out);
  } else if (const auto* array = node.as_array()) {
    out.type = CaseNode::Type::list;
    out.items.reserve(array->size());
    for (const toml::node& item : *array) out.items.push_back(convert(item));
  } else if (const auto* text = node.as_string()) {
    out.type = CaseNode::Type::text;
    out.text = text->get();
  } else if (const auto* integer = node.as_integer()) {
    convert_integer(integer->get(), out);
  } else if (const auto* number = node.as_floating_point()) {
    out.type = CaseNode::Type::number;
    out.number = number->get();
    out.text = written(out.number);
  } else if (const auto* flag = node.as_boolean()) {
    out.type = CaseNode::Type::boolean;
    out.flag = flag->get();
  } else {
    out.type = CaseNode::Type::date;
    out.text = "a date or time";
  }
  return out;
}

/// Number of the first line in which dots nest tables deeper than any case does, which could overflow a recursive
/// reader's stack: dots outside of strings and comments, counted from the last character that ends a key. 0: none.
int too_deep_line(std::string_view text) {
  constexpr int deepest = 32;
  int line = 1, dots = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '#') {
      i = std::min(text.find('\n', i), text.size()) - 1;
    } else if (c == '"' || c == '\'') {
      const std::string_view three = text.substr(i, 3);
      const bool block = three == "\"\"\"" || three == "'''";
      const std::string_view quote = block ? three : text.substr(i, 1);
      for (i += quote.size(); i < text.size() && !text.substr(i).starts_with(quote); ++i) {
        if (c == '"' && text[i] == '\\') ++i;
        if (i < text.size() && text[i] == '\n' && ++line && !block) break;
      }
      i += block ? 2 : 0;
    } else if (c == '\n') {
      ++line;
      dots = 0;
    } else if (c == '=' || c == ',' || c == '{') {
      dots = 0;
    } else if (c == '.' && ++dots > deepest) {
      return line;
    }
  }
  return 0;
}

struct LineSpan {
  std::size_t begin, end;
};

LineSpan span_of_line(std::string_view text, int line) {
  std::size_t begin = 0;
  for (int i = 1; i < line && begin < text.size(); ++i) begin = std::min(text.find('\n', begin), text.size() - 1) + 1;
  return {begin, std::min(text.find('\n', begin), text.size())};
}

std::string_view trimmed(std::string_view s) {
  while (!s.empty() && (s.front() == ' ' || s.front() == '\t')) s.remove_prefix(1);
  while (!s.empty() && (s.back() == ' ' || s.back() == '\t' || s.back() == '\r')) s.remove_suffix(1);
  return s;
}

/// Value of a line that is "key = value" and does not continue on the next line; empty for anything else.
std::string_view value_on_line(std::string_view line) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return {};
  const std::string_view key = trimmed(line.substr(0, equals)), value = trimmed(line.substr(equals + 1));
  const bool plain_key = !key.empty() && std::ranges::all_of(key, [](char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '-' || c == '.';
  });
  const bool goes_on =
      value.starts_with("\"\"\"") || value.starts_with("'''") || value.starts_with('[') || value.starts_with('{');
  return plain_key && !goes_on ? value : std::string_view{};
}

/// The most common mistake is a quantity without quotes.
std::string hint_for(std::string_view value) {
  const bool number =
      !value.empty() && (std::isdigit(static_cast<unsigned char>(value.front())) || value.front() == '-');
  const bool unit = std::ranges::any_of(value, [](char c) { return std::isalpha(static_cast<unsigned char>(c)); });
  const bool quoted = value.find('"') != std::string_view::npos;
  if (!number || !unit || quoted) return "";
  std::string shown(value.substr(0, std::min(value.find('#'), std::size_t{40})));
  shown = trimmed(shown);
  return "; a value with a unit is written in quotes: \"" + shown + "\"";
}

/// The two most common mistakes in plain words; otherwise the parser's message.
std::string in_plain_words(std::string_view description) {
  if (description.find("string: unescaped control characters") != std::string_view::npos)
    return "the string is not closed: its second quote is missing";
  constexpr std::string_view twice = "cannot redefine existing ";
  if (description.find("key-value pair: " + std::string(twice)) != std::string_view::npos) {
    const std::size_t quote = description.find('\'', description.find(twice));
    const std::string_view key = description.substr(quote + 1, description.rfind('\'') - quote - 1);
    return "the key \"" + std::string(key) + "\" is given twice";
  }
  return std::string(description);
}

Problem problem_of(const toml::parse_error& error) {
  return {Severity::error, pos_of(error.source()), "", "invalid TOML: " + in_plain_words(error.description())};
}

/// Blanks the faulty line where the rest can be read without it. \return the hint for its message, or nullopt where
/// reading has to stop.
std::optional<std::string> blank_line(std::string& text, int line) {
  const LineSpan span = span_of_line(text, line);
  const std::string_view whole = std::string_view(text).substr(span.begin, span.end - span.begin);
  const std::string_view value = value_on_line(whole);
  if (value.empty()) return std::nullopt;
  std::string hint = hint_for(value);
  std::fill(text.begin() + static_cast<std::ptrdiff_t>(span.begin),
            text.begin() + static_cast<std::ptrdiff_t>(span.end), ' ');
  return hint;
}

/// For some errors toml++ gives the position after the end of a line.
int line_at_fault(std::string_view text, const SourcePos& pos) {
  if (pos.column > 1) return pos.line;
  const LineSpan span = span_of_line(text, pos.line);
  const bool blank = trimmed(text.substr(span.begin, span.end - span.begin)).empty();
  return blank && pos.line > 1 ? pos.line - 1 : pos.line;
}

} // namespace

TomlText read_toml(std::string_view given) {
  constexpr int most_errors = 50;
  TomlText out;
  if (const int line = too_deep_line(given); line > 0) {
    out.problems.push_back({Severity::error, {line, 1}, "", "tables are nested deeper than any case needs"});
    return out;
  }
  std::string text(given);
  int last_line = 0;
  for (int tries = 0; tries < most_errors; ++tries) {
    try {
      const toml::table table = toml::parse(std::string_view(text));
      convert_table(table, out.root);
      out.root.pos = {1, 1};
      return out;
    } catch (const toml::parse_error& error) {
      Problem problem = problem_of(error);
      const int line = line_at_fault(text, problem.pos);
      const auto hint = line > last_line ? blank_line(text, line) : std::nullopt;
      // An error after a line that could not be skipped is most likely a consequence of it.
      if (tries == 0 || line > last_line) {
        problem.text += hint.value_or("");
        out.problems.push_back(std::move(problem));
      }
      if (!hint) return out;
      last_line = line;
    }
  }
  return out;
}

} // namespace bedbow
