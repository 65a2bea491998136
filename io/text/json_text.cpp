#include "io/text/json_text.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace bedbow {

namespace {

using Json = nlohmann::ordered_json;

std::string plain(const Json& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

bool on_one_line(const Json& value) {
  if (value.is_object()) return value.empty();
  return std::none_of(value.begin(), value.end(), [](const Json& v) { return v.is_structured(); });
}

void write(std::string& out, const Json& value, std::size_t depth) {
  if (!value.is_structured() || on_one_line(value)) {
    out += plain(value);
    return;
  }
  const std::string inner(depth + 1, ' ');
  out += value.is_object() ? "{\n" : "[\n";
  bool first = true;
  for (const auto& item : value.items()) {
    if (!first) out += ",\n";
    first = false;
    out += inner;
    if (value.is_object()) out += plain(Json(item.key())) + ": ";
    write(out, item.value(), depth + 1);
  }
  out += "\n" + std::string(depth, ' ') + (value.is_object() ? "}" : "]");
}

} // namespace

std::string json_text(const Json& value) {
  std::string out;
  write(out, value, 0);
  return out + "\n";
}

} // namespace bedbow
