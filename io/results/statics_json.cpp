#include "io/results/statics_json.h"

#include "io/results/json_numbers.h"

namespace bedbow {

namespace {

using Json = nlohmann::ordered_json;

Json part_json(int part) {
  return part == ground_part ? Json(nullptr) : Json(part);
}

Json load_json(const LoadResult& l) {
  return {{"what", l.what},
          {"part", part_json(l.part)},
          {"at_mm", json_vector(l.at, 1e3)},
          {"force_N", json_vector(l.force)},
          {"moment_N_mm", json_vector(l.moment, 1e3)}};
}

Json contact_json(const ContactResult& c) {
  Json item{{"what", c.what},
            {"joins", c.joins},
            {"parts", Json::array({part_json(c.parts[0]), part_json(c.parts[1])})},
            {"normal", json_vector(c.normal)}};
  for (const auto& [key, axis] : {std::pair{"x_mm", 0}, std::pair{"y_mm", 1}, std::pair{"z_mm", 2}}) {
    item[key] = Json::array();
    for (const Eigen::Vector3d& at : c.at) item[key].push_back(json_number(to_mm(at[axis])));
  }
  item["force_N"] = Json::array();
  for (const double f : c.force) item["force_N"].push_back(json_number(f));
  return item;
}

} // namespace

Json parts_json(const std::vector<PartResult>& parts) {
  Json out = Json::array();
  for (const PartResult& p : parts) out.push_back({{"name", p.name}, {"of", p.of}});
  return out;
}

void add_joined(const JointResult& j, Json& item) {
  const bool hold = j.joins[0].empty(); // a hold without forces has no shares
  if (!hold) {
    item["joins"] = j.joins;
    item["parts"] = Json::array({part_json(j.parts[0]), part_json(j.parts[1])});
  }
  if (j.at_each)
    item["at_each_mm"] = Json::array({json_vector((*j.at_each)[0], 1e3), json_vector((*j.at_each)[1], 1e3)});
  if (hold) item["shares"] = Json::array();
  for (const HoldShare& s : j.shares)
    item["shares"].push_back({{"part", part_json(s.part)},
                              {"at_mm", json_vector(s.at, 1e3)},
                              {"vector_N", json_vector(s.force)},
                              {"moment_N_mm", json_vector(s.moment, 1e3)}});
}

void add_statics(const StepResult& step, Json& item) {
  item["loads"] = Json::array();
  for (const LoadResult& l : step.loads) item["loads"].push_back(load_json(l));
  item["contacts"] = Json::array();
  for (const ContactResult& c : step.contacts) item["contacts"].push_back(contact_json(c));
}

} // namespace bedbow
