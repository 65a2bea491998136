// The file as a whole, materials and the sheet.
#include "io/schema/schema.h"
#include "mesh/piece/material.h"

#include <algorithm>
#include <utility>

namespace bedbow::schema {

namespace {

TableSpec material() {
  return {
      "material",
      "[material.NAME]",
      "A material of the case. It takes precedence over a built-in one of the same name (see `bedbow list`).",
      {
          quantity_key("E", Dim::stress, "205 GPa", "Young's modulus").positive().required(),
          number_key("nu", "Poisson's ratio; optional where G is given").like("0.29").between(-0.99, 0.499),
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
          quantity_key("K", Dim::stress, "520 MPa", "hardening of the sheet: flow stress = K strain^n").positive(),
          number_key("n", "exponent of the hardening").like("0.23").between(0, 1),
          choice_key("gauge", gauge_tables().name_list(), "gauge table for the thickness of this sheet"),
      }};
}

TableSpec sheet() {
  return {"sheet",
          "[sheet]",
          "The sheet to be bent.",
          {
              text_key("material", "built-in material or one of the case").like("DC01").required(),
              kind_key("thickness", ValueKind::sheet, "thickness, or a gauge from the material's gauge table")
                  .like("1.5 mm")
                  .positive()
                  .required(),
              quantity_key("width", Dim::length, "600 mm", "along the bend line").positive().required(),
              quantity_key("centre", Dim::length, "450 mm", "x of its centre").required(),
              quantity_key("flange", Dim::length, "25 mm", "from the bend line to the line where the apron bears on it")
                  .positive()
                  .required(),
              quantity_key("inside_radius", Dim::length, "2 mm", "inside radius of the bend").not_negative().required(),
              quantity_key("angle", Dim::angle, "90 deg", "wanted bend angle after springback").positive().required(),
              quantity_key("grip", Dim::length, "15 mm",
                           "depth behind the nose over which the clamped sheet transfers its moment to the bed")
                  .positive()
                  .required(),
              number_key("friction", "coefficient between sheet and nose, and sheet and bed; 0: it slides freely. By "
                                     "default the least static friction of steel on steel in Gieck's tables")
                  .like("0.15")
                  .between(0, 2)
                  .otherwise(Sheet{}.friction)
                  .told(),
              text_key("moment_law", "law for the bending moment of the sheet, see `bedbow list`")
                  .like("rigid-plastic")
                  .otherwise("the greater of rigid-plastic and, where K and n of the sheet are known, power-law")
                  .told(),
          }};
}

TableSpec whole_case() {
  using enum ValueKind;
  return {"case",
          "",
          "The file as a whole.",
          {
              text_key("title", "title of the case").like("Hive lid").otherwise("the file's name"),
              boolean_key("gravity", "self-weight along -z; may also stand in a [[load]]").otherwise("false"),
              table_key("material", named, "material", "materials of the case"),
              table_key("sheet", table, "sheet", "the sheet to be bent"),
              table_key("bed", table, "bed", "the bed"),
              table_key("clamp", table, "clamp", "the clamp"),
              table_key("apron", table, "apron", "the apron"),
              table_key("member", tables, "member", "straight beams between two points"),
              table_key("panel", tables, "panel", "flat rectangular plates"),
              table_key("hold", tables, "hold", "places of members and panels held to ground"),
              table_key("load", tables, "load", "forces, moments, pressure, self-weight"),
              table_key("dial", tables, "dial", "dial indicators"),
              table_key("limits", table, "limits", "acceptance limits"),
              table_key("solve", table, "solve", "solver settings"),
              table_key("sweep", table, "sweep", "variants of the case"),
              table_key("stock", tables, "stock", "bars on sale"),
              table_key("output", table, "output", "units of printed values"),
              table_key("fit", table, "fit", "unknowns to identify from dial readings"),
              table_key("plugins", table, "plugins", "shared objects to load"),
              table_key("mesh", table, "mesh", "a mesh supplied by the user"),
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
