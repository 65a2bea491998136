// Members, panels, holds, loads and dials.
#include "io/schema/schema.h"

#include <utility>

namespace bedbow::schema {

namespace {

KeySpec point(std::string key, std::string doc) {
  return quantity_key(std::move(key), Dim::length, "450 mm", std::move(doc)).list(3, 3);
}

KeySpec material_key() {
  return text_key("material", "built-in material or one of the case").like("S275JR").required();
}

TableSpec releases() {
  return {"releases",
          "releases = { ... }",
          "Degrees of freedom that an end of the member does not transmit, in its own axes: x along it, z along `up`.",
          {choice_key("from", movements, "released at `from`").list(1, 6),
           choice_key("to", movements, "released at `to`").list(1, 6)}};
}

TableSpec member() {
  std::vector<KeySpec> keys{name_key("name", "name used by other tables").like("rod").otherwise("member and number"),
                            point("from", "[x, y, z] of one end").required(),
                            point("to", "[x, y, z] of the other end").required()};
  const std::vector<KeySpec> shape = shape_keys();
  keys.insert(keys.end(), shape.begin(), shape.end());
  const std::vector<KeySpec> rest{
      number_key("up", "[x, y, z]: direction of the section's height")
          .like("[0, 0, 1]")
          .list(3, 3)
          .otherwise("z, or y for a member along z"),
      material_key(),
      table_key("releases", ValueKind::table, "releases", "hinged ends"),
      boolean_key("tension_only", "goes slack instead of carrying compression").otherwise("false"),
      integer_key("divisions", "number of elements along it").like("4").between(1, 10000).otherwise("4").told(),
      text_key("element", "element formulation, see `bedbow list`").like("beam").otherwise("built in"),
  };
  keys.insert(keys.end(), rest.begin(), rest.end());
  return {
      "member", "[[member]]",
      "Straight beam between two points. An end is joined to what it lies on: another member, at its end or between "
      "its ends, a bar, a panel, a joined mesh. Members that only cross are not joined. For a rectangle, width is "
      "across, height along `up`.",
      std::move(keys), true};
}

TableSpec panel() {
  return {"panel",
          "[[panel]]",
          "Flat rectangular plate: a corner and two edges.",
          {name_key("name", "name used by other tables").like("cheek").otherwise("panel and number"),
           point("corner", "[x, y, z] of a corner").required(), point("edge_a", "vector along one edge").required(),
           point("edge_b", "vector along the other edge").required(),
           quantity_key("thickness", Dim::length, "12 mm", "thickness of the plate").positive().required(),
           material_key(),
           integer_key("divisions", "numbers of elements along edge_a and edge_b")
               .like("[8, 6]")
               .list(2, 2)
               .between(1, 2000)
               .otherwise("[8, 8]")
               .told(),
           text_key("element", "element formulation, see `bedbow list`").like("shell4").otherwise("built in")}};
}

TableSpec hold() {
  return {"hold",
          "[[hold]]",
          "Holds a point, a line, or a whole panel edge of members and panels to ground, or points of the user's mesh. "
          "Either "
          "`at`, or `from` and `to`, or `points`.",
          {name_key("name", "name used in sweeps").like("foot"), point("at", "[x, y, z] of the point"),
           point("from", "[x, y, z] where the line begins"), point("to", "[x, y, z] where it ends"),
           text_key("points", "instead of a place: a set of the mesh's points, by the name of its array").like("foot"),
           choice_key("holds", movements, "held degrees of freedom").list(1, 6).required()}};
}

TableSpec load() {
  const auto vector = [](std::string key, Dim dim, std::string example, std::string doc) {
    return quantity_key(std::move(key), dim, std::move(example), std::move(doc)).list(3, 3);
  };
  return {
      "load",
      "[[load]]",
      "Force and moment at a point (`at`), force along a line (`from`, `to`, `per_length`), pressure on a panel "
      "(`panel`, `pressure`) or on a part of the user's mesh (`on`, `pressure`), a force shared by points of the "
      "user's "
      "mesh (`points`, `force`), or self-weight (`gravity`).",
      {name_key("name", "name used in sweeps").like("weight"),
       ref_key("on",
               "the bar, member, panel or part of the mesh that carries it; a point is carried to a bar by a rigid arm")
           .otherwise("the member, panel or mesh at that place")
           .told(),
       point("at", "[x, y, z] of a point"), vector("force", Dim::force, "-100 N", "[x, y, z] at the point"),
       vector("moment", Dim::moment, "20 N*m", "[x, y, z] at the point"),
       point("from", "[x, y, z] where the line begins"), point("to", "[x, y, z] where the line ends"),
       vector("per_length", Dim::force_per_length, "-10 N/mm", "[x, y, z] along the line"),
       name_key("panel", "the panel under pressure").like("cheek"),
       quantity_key("pressure", Dim::stress, "2 kPa", "positive along the normal edge_a x edge_b"),
       text_key("points", "a set of the mesh's points, by the name of its array: the force is shared in proportion to "
                          "the array's values")
           .like("tip"),
       boolean_key("gravity", "self-weight of everything along -z").otherwise("false")}};
}

TableSpec dial() {
  return {"dial",
          "[[dial]]",
          "A dial indicator: reports the displacement of one spot.",
          {name_key("name", "name used in the results").like("mid").required(),
           ref_key("on", "the bar, member, panel or part of the mesh that it touches").like("clamp.spine").required(),
           point("at", "[x, y, z] of the spot; carried rigidly from the nearest section").required(),
           quantity_key("reading", Dim::length, "0.31 mm", "measured displacement"),
           choice_key("direction", {"x", "y", "z"}, "axis along which it was measured")}};
}

} // namespace

void add_structure(Schema& schema) {
  for (auto* make : {member, releases, panel, hold, load, dial}) schema.tables.push_back(make());
}

} // namespace bedbow::schema
