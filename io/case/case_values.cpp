#include "io/case/case_values.h"

#include "mesh/piece/si.h"

namespace bedbow {

const CaseValue* CaseValues::value(std::string_view key) const {
  const auto it = values_.find(key);
  return it != values_.end() && it->second.good ? &it->second : nullptr;
}

std::optional<double> CaseValues::number(std::string_view key) const {
  const CaseValue* v = value(key);
  if (!v || v->numbers.empty()) return std::nullopt;
  return v->numbers.front();
}

double CaseValues::number_or_nan(std::string_view key) const {
  return number(key).value_or(nan);
}

double CaseValues::number_or(std::string_view key, double otherwise) const {
  return number(key).value_or(given(key) ? nan : otherwise);
}

int CaseValues::integer_or(std::string_view key, int otherwise) const {
  const auto v = number(key);
  return v ? static_cast<int>(*v) : otherwise;
}

std::vector<double> CaseValues::numbers(std::string_view key) const {
  const CaseValue* v = value(key);
  return v ? v->numbers : std::vector<double>{};
}

std::optional<std::string> CaseValues::text(std::string_view key) const {
  const CaseValue* v = value(key);
  if (!v || v->texts.empty()) return std::nullopt;
  return v->texts.front();
}

std::vector<std::string> CaseValues::texts(std::string_view key) const {
  const CaseValue* v = value(key);
  return v ? v->texts : std::vector<std::string>{};
}

bool CaseValues::flag_or(std::string_view key, bool otherwise) const {
  const CaseValue* v = value(key);
  return v ? v->flag : otherwise;
}

Eigen::Vector3d CaseValues::vector3(std::string_view key) const {
  const CaseValue* v = value(key);
  if (!v || v->numbers.size() != 3) return {nan, nan, nan};
  return {v->numbers[0], v->numbers[1], v->numbers[2]};
}

const CaseValues* CaseValues::table(std::string_view key) const {
  const CaseValue* v = value(key);
  return v && !v->tables.empty() ? &v->tables.front() : nullptr;
}

const std::vector<CaseValues>& CaseValues::tables(std::string_view key) const {
  static const std::vector<CaseValues> none;
  const CaseValue* v = value(key);
  return v ? v->tables : none;
}

SourcePos CaseValues::pos(std::string_view key) const {
  const auto it = values_.find(key);
  return it == values_.end() ? pos_ : it->second.pos;
}

std::string CaseValues::path(std::string_view key) const {
  return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

std::string CaseValues::name() const {
  return name_.empty() ? text("name").value_or("") : name_;
}

} // namespace bedbow
