/// \file
/// Small typed registries of extensible items, by name. Passed along, never global.
#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

/// Entries of one kind in the order added. Entry needs a member `name`.
template <class Entry> class Registry {
public:
  explicit Registry(std::string kind)
      : kind_(std::move(kind)) {}
  /// Adds an entry. Throws std::invalid_argument when the name is taken.
  void add(Entry entry) {
    if (find(entry.name)) throw std::invalid_argument(kind_ + " '" + entry.name + "' is registered twice");
    entries_.push_back(std::move(entry));
  }
  /// The entry of that name, or nullptr.
  [[nodiscard]] const Entry* find(std::string_view name) const {
    auto it = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& e) { return e.name == name; });
    return it == entries_.end() ? nullptr : &*it;
  }
  /// The entry of that name. Throws std::invalid_argument listing the valid names.
  [[nodiscard]] const Entry& get(std::string_view name) const {
    if (const Entry* e = find(name)) return *e;
    throw std::invalid_argument("unknown " + kind_ + " '" + std::string(name) + "'; available: " + names());
  }
  [[nodiscard]] std::string names() const {
    std::string out;
    for (const Entry& e : entries_) out += (out.empty() ? "" : ", ") + e.name;
    return out;
  }
  [[nodiscard]] const std::vector<Entry>& entries() const { return entries_; }
  [[nodiscard]] const std::string& kind() const { return kind_; }

private:
  std::string kind_;
  std::vector<Entry> entries_;
};

} // namespace bedbow
