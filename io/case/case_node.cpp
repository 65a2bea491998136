#include "io/case/case_node.h"

#include <algorithm>
#include <charconv>

namespace bedbow {

namespace {

std::string written(double value) {
  char buffer[32];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return {buffer, end};
}

std::string shown_list(const CaseNode& node) {
  constexpr std::size_t most = 4;
  std::string out = "[";
  for (std::size_t i = 0; i < node.items.size() && i < most; ++i) out += (i ? ", " : "") + shown(node.items[i]);
  return out + (node.items.size() > most ? ", ...]" : "]");
}

/// Element of an array of tables by name or by number from 1.
CaseNode* element(CaseNode& list, std::string_view which) {
  for (CaseNode& item : list.items) {
    const CaseNode* name = item.find("name");
    if (name && name->type == CaseNode::Type::text && name->text == which) return &item;
  }
  std::size_t number = 0;
  const auto read = std::from_chars(which.data(), which.data() + which.size(), number);
  const bool whole = read.ec == std::errc() && read.ptr == which.data() + which.size();
  return whole && number >= 1 && number <= list.items.size() ? &list.items[number - 1] : nullptr;
}

} // namespace

const CaseNode* CaseNode::find(std::string_view key) const {
  const auto it = std::ranges::find(entries, key, &CaseEntry::key);
  return it == entries.end() ? nullptr : &it->value;
}

CaseNode* CaseNode::find(std::string_view key) {
  const auto it = std::ranges::find(entries, key, &CaseEntry::key);
  return it == entries.end() ? nullptr : &it->value;
}

bool CaseNode::is_table_list() const {
  return type == Type::list && !items.empty() && std::ranges::all_of(items, &CaseNode::is_table);
}

CaseNode CaseNode::of_text(std::string text, SourcePos pos) {
  CaseNode out;
  out.type = Type::text;
  out.text = std::move(text);
  out.pos = pos;
  return out;
}

CaseNode CaseNode::of_number(double number, SourcePos pos) {
  CaseNode out;
  out.type = Type::number;
  out.number = number;
  out.text = written(number);
  out.pos = pos;
  return out;
}

std::string kind_of(const CaseNode& node) {
  switch (node.type) {
  case CaseNode::Type::text:
    return "a string";
  case CaseNode::Type::integer:
    return "a whole number";
  case CaseNode::Type::number:
    return "a number";
  case CaseNode::Type::boolean:
    return "a boolean";
  case CaseNode::Type::date:
    return "a date";
  case CaseNode::Type::list:
    return node.is_table_list() ? "a list of tables" : "a list";
  case CaseNode::Type::table:
    return "a table";
  }
  return "something";
}

std::string shown(const CaseNode& node) {
  constexpr std::size_t longest = 60;
  switch (node.type) {
  case CaseNode::Type::text:
    return "\"" + node.text.substr(0, longest) + (node.text.size() > longest ? "...\"" : "\"");
  case CaseNode::Type::boolean:
    return node.flag ? "true" : "false";
  case CaseNode::Type::list:
    return shown_list(node);
  case CaseNode::Type::table:
    return "{...}";
  default:
    return node.text;
  }
}

CaseNode* find_parent(CaseNode& root, std::string_view dotted, std::string& last) {
  CaseNode* at = &root;
  // A name may itself contain dots (material "1.4301"), so the longest matching key is tried first.
  while (true) {
    bool stepped = false;
    for (std::size_t dot = dotted.rfind('.'); dot != std::string_view::npos && dot > 0;
         dot = dotted.rfind('.', dot - 1)) {
      const std::string_view part = dotted.substr(0, dot);
      CaseNode* next = at->type == CaseNode::Type::list ? element(*at, part) : at->find(part);
      if (!next) continue;
      at = next;
      dotted.remove_prefix(dot + 1);
      stepped = true;
      break;
    }
    if (!stepped) break;
  }
  // What is left is the last key, unless a step was missing.
  if (dotted.empty() || (dotted.find('.') != std::string_view::npos && !at->find(dotted))) return nullptr;
  if (!at->is_table()) return nullptr;
  last = dotted;
  return at;
}

CaseNode* find_key(CaseNode& root, std::string_view dotted) {
  std::string last;
  CaseNode* parent = find_parent(root, dotted, last);
  return parent ? parent->find(last) : nullptr;
}

const CaseNode* find_key(const CaseNode& root, std::string_view dotted) {
  return find_key(const_cast<CaseNode&>(root), dotted);
}

} // namespace bedbow
