// The file as a whole, materials and the sheet.
#include "io/schema/schema.h"

#include <algorithm>
#include <utility>

namespace bedbow::schema {

namespace {

TableSpec material() {
  return {
      "material",
      "[material.NAME]",
      "A material of one's own. It goes before a built-in one of the same name; `bedbow list` shows those.",
      {
          quantity_key("E", Dim::stress, "205 GPa", "Young's modulus").positive().required(),
          number_key("nu", "Poisson's ratio; may be left out where G is given").like("0.29").between(-0.99, 0.499),
          quantity_key("G", Dim::stress, "79 GPa", "shear modulus, for timber, where it does not follow from E and nu")
              .positive()
              .otherwise("E / (2 (1 + nu))"),
          quantity_key("density", Dim::density, "7850 kg/m^3", "needed for gravity, masses and natural frequencies")
              .positive()
              .otherwise("unknown"),
          quantity_key("yield", Dim::stress, "275 MPa", "yield or proof stress; needed for utilisation")
              .positive()
              .otherwise("unknown"),
          quantity_key("tensile", Dim::stress, "430 MPa", "tensile strength").positive().otherwise("unknown"),
          quantity_key("K", Dim::stress, "520 MPa", "hardening of sheet: flow stress = K strain^n").positive(),
          number_key("n", "exponent of the hardening").like("0.23").between(0, 1),
          choice_key("gauge", {"steel", "galvanised", "stainless", "aluminium"},
                     "gauge table by which this sheet's thickness may be given"),
      }};
}

TableSpec sheet() {
  return {"sheet",
          "[sheet]",
          "What is being bent.",
          {
              text_key("material", "built-in or own material").like("DC01").required(),
              kind_key("thickness", ValueKind::sheet, "of the sheet; also as a gauge of the material's own gauge table")
                  .like("1.5 mm")
                  .positive()
                  .required(),
              quantity_key("width", Dim::length, "600 mm", "along the bend line").positive().required(),
              quantity_key("centre", Dim::length, "450 mm", "x of its middle").required(),
              quantity_key("flange", Dim::length, "25 mm", "from the bend line to the line where the apron bears on it")
                  .positive()
                  .required(),
              quantity_key("inside_radius", Dim::length, "2 mm", "of the bend").not_negative().required(),
              quantity_key("angle", Dim::angle, "90 deg", "wanted after springback").positive().required(),
              quantity_key("grip", Dim::length, "15 mm",
                           "depth behind the nose over which the held sheet passes its moment to the bed")
                  .positive()
                  .required(),
              text_key("moment_law", "law for the moment that folds the sheet; `bedbow list` shows them")
                  .like("rigid-plastic")
                  .otherwise("rigid-plastic")
                  .told(),
          }};
}

TableSpec whole_case() {
  using enum ValueKind;
  return {"case",
          "",
          "The file as a whole.",
          {
              text_key("title", "what the case is called").like("Hive lid").otherwise("the file's name"),
              boolean_key("gravity", "self-weight along -z; may also stand in a [[load]]").otherwise("false"),
              table_key("material", named, "material", "own materials"),
              table_key("sheet", table, "sheet", "what is being bent"),
              table_key("bed", table, "bed", "the bed"),
              table_key("clamp", table, "clamp", "the clamp"),
              table_key("apron", table, "apron", "the apron"),
              table_key("member", tables, "member", "straight beams between two points"),
              table_key("panel", tables, "panel", "flat rectangular plates"),
              table_key("hold", tables, "hold", "places of members and panels held to ground"),
              table_key("load", tables, "load", "forces, moments, pressure, self-weight"),
              table_key("dial", tables, "dial", "dial indicators"),
              table_key("limits", table, "limits", "what is still good enough"),
              table_key("solve", table, "solve", "how to solve"),
              table_key("sweep", table, "sweep", "variants of the case"),
              table_key("stock", tables, "stock", "what can be bought"),
              table_key("output", table, "output", "units of what is shown"),
              table_key("fit", table, "fit", "unknowns to be found from dial readings"),
              table_key("plugins", table, "plugins", "shared objects to load"),
              table_key("mesh", table, "mesh", "a mesh of one's own"),
          }};
}

} // namespace

void add_case(Schema& schema) {
  TableSpec whole = whole_case();
  const std::vector<KeySpec> joints = joint_table_keys(); // before the structure, which may be among what they join
  whole.keys.insert(std::ranges::find(whole.keys, "member", &KeySpec::key), joints.begin(), joints.end());
  schema.tables.push_back(std::move(whole));
  schema.tables.push_back(material());
  schema.tables.push_back(sheet());
}

} // namespace bedbow::schema
