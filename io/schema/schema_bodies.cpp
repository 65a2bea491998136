// Bed, clamp and apron, their bars, and the nose of the clamp.
#include "io/schema/schema.h"

#include <utility>

namespace bedbow::schema {

namespace {

void append(std::vector<KeySpec>& to, const std::vector<KeySpec>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

TableSpec body(const std::string& id, const std::vector<KeySpec>& own) {
  std::vector<KeySpec> keys{
      length("length", "900 mm", "along the bend line").positive().required(),
      text_key("material", "built-in material or one of the case").like("S275JR").otherwise("given by each bar"),
  };
  if (id != "bed") keys.push_back(length("start", "0 mm", "x of its left end").otherwise("0 mm"));
  keys.push_back(table_key("bar", ValueKind::tables, "bar", "its bars").required());
  keys.push_back(table_key("crown", ValueKind::table, "crown", "shims or pre-bow along its bend-line edge"));
  append(keys, own);
  return {id, "[" + id + "]", "The " + id + ": a body of bars along x.", std::move(keys)};
}

TableSpec bar() {
  std::vector<KeySpec> keys{name_key("name", "name used by joints").like("web").required()};
  append(keys, shape_keys());
  append(
      keys,
      {
          length("at", "8 mm", "[y, z] of the centroid; for the apron as it stands at 0 deg. Not needed with `stack`")
              .list(2, 2),
          text_key("stack",
                   "instead of a place: \"on\", \"under\", \"behind\" or \"before\" another bar, which it then "
                   "touches; `at` still gives the other coordinate")
              .like("on bed.web"),
          choice_key("model", words_of(bar_models),
                     "beam: sections stay plane; strip: bends across its wider side, too; plate: shell elements on its "
                     "mid-plane")
              .otherwise("strip for a rectangle, beam for all others"),
          text_key("element", "element formulation, see `bedbow list`").like("beam").otherwise("built in"),
          text_key("material", "where it differs from the body's").like("S275JR").otherwise("the body's"),
          length("start", "0 mm", "x of its left end").otherwise("the body's"),
          length("length", "900 mm", "along the bend line").positive().otherwise("the body's"),
      });
  return {"bar", "[[BODY.bar]]", "A bar of the bed, clamp or apron, straight along x.", std::move(keys), true};
}

TableSpec crown() {
  return {"crown",
          "[BODY.crown]",
          "Strip on the bend-line edge that rises towards the sheet: shims, or a machined or scraped pre-bow. "
          "Linear between its places, constant beyond them.",
          {length("x", "100 mm", "places along the bend line, left to right").list(1, 1000).required(),
           length("height", "0.05 mm", "towards the sheet at each place").list(1, 1000).required()}};
}

TableSpec edge(const std::string& id, const std::string& heading, const std::string& what) {
  return {
      id,
      heading,
      "Which bar carries " + what + ".",
      {name_key("bar", "name of the bar").like("top").otherwise("the only bar, else the nearest to the bend line")}};
}

TableSpec nose() {
  return {"nose",
          "[clamp.nose]",
          "Where the clamp bears on the sheet.",
          {
              name_key("bar", "the bar that carries it")
                  .like("spine")
                  .otherwise("the only bar, else the nearest to the bend line"),
              length("setback", "3.5 mm", "y of the nose edge")
                  .otherwise("thickness + inside radius; less with a rounded edge"),
              length("radius", "3 mm", "radius of the rounded nose edge").not_negative().otherwise("0 mm, sharp"),
              length("land", "15 mm", "depth of the bearing face behind the edge").positive().required(),
          }};
}

TableSpec fingers() {
  return {"fingers",
          "[clamp.fingers]",
          "The nose is made of loose pieces. Either `widths`, or `width` and `count`.",
          {
              length("widths", "40 mm", "widths of the pieces, left to right").positive().list(),
              length("width", "40 mm", "width of every piece").positive(),
              integer_key("count", "number of pieces of that width").like("12").between(1, 1000),
              length("start", "100 mm", "x of the left end of the first").otherwise("the clamp's left end").told(),
              length("gap", "0.1 mm", "gap between neighbours").not_negative().otherwise("0 mm"),
              length("starts", "100 mm", "x of the left end of each, instead of start and gap").list(),
              length("reach", "40 mm", "from the carrying bar to the nose edge").positive().required(),
              length("thickness", "12 mm", "thickness of the pieces").positive().required(),
              text_key("material", "built-in material or one of the case")
                  .like("S275JR")
                  .otherwise("that of the carrying bar"),
              quantity_key("root_stiffness", Dim::rotational_stiffness, "5000 N*m/rad",
                           "stiffness of one finger's root against tipping about x, from its screw or hook")
                  .positive()
                  .otherwise("rigid")
                  .told(),
          }};
}

} // namespace

std::vector<KeySpec> shape_keys() {
  const auto given = [](std::string key, Dim dim, std::string example, const std::string& doc) {
    return quantity_key(std::move(key), dim, std::move(example), "shape \"section\": " + doc);
  };
  return {
      text_key("shape", "rectangle (width, height); tube (and wall); round (diameter); pipe (diameter, wall); angle, "
                        "channel (width, height, wall); section: given properties; or a shape provided by a plugin")
          .like("rectangle")
          .required(),
      length("width", "16 mm", "along y").positive(),
      length("height", "80 mm", "along z").positive(),
      length("diameter", "20 mm", "outside").positive(),
      length("wall", "3 mm", "thickness of the wall").positive(),
      quantity_key("turn", Dim::angle, "90 deg", "turns the shape about x, from y towards z").otherwise("0 deg"),
      given("A", Dim::area, "1280 mm^2", "area").positive(),
      given("Iyy", Dim::second_moment, "68.3 cm^4", "integral of z^2 over the area").positive(),
      given("Izz", Dim::second_moment, "2.73 cm^4", "integral of y^2 over the area").positive(),
      given("Iyz", Dim::second_moment, "0 cm^4", "integral of y z over the area").otherwise("0"),
      given("J", Dim::second_moment, "9.55 cm^4", "torsion constant").positive(),
      given("Ay", Dim::area, "1070 mm^2", "shear area along y").positive().otherwise("5/6 A"),
      given("Az", Dim::area, "1070 mm^2", "shear area along z").positive().otherwise("5/6 A"),
      given("Wt", Dim::section_modulus, "5.97 cm^3", "torsional section modulus")
          .positive()
          .otherwise("J divided by the lesser side"),
      given("shear_centre_y", Dim::length, "0 mm", "y of the shear centre from the centroid").otherwise("0"),
      given("shear_centre_z", Dim::length, "0 mm", "z of the shear centre from the centroid").otherwise("0"),
  };
}

void add_bodies(Schema& schema) {
  using enum ValueKind;
  schema.tables.push_back(body("bed", {table_key("edge", table, "edge", "the front top edge")}));
  schema.tables.push_back(body("clamp", {table_key("nose", table, "nose", "where it bears on the sheet"),
                                         table_key("fingers", table, "fingers", "loose pieces that make the nose")}));
  schema.tables.push_back(body("apron", {table_key("face", table, "face", "the face that swings the flange")}));
  schema.tables.push_back(bar());
  schema.tables.push_back(crown());
  schema.tables.push_back(edge("edge", "[bed.edge]", "the bed's front top edge"));
  schema.tables.push_back(edge("face", "[apron.face]", "the apron's face"));
  schema.tables.push_back(nose());
  schema.tables.push_back(fingers());
}

} // namespace bedbow::schema
