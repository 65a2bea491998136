// Settings: limits, solving, sweeps, stock, units, and the rest.
#include "io/schema/schema.h"
#include "io/units/output_units.h"

#include <cmath>
#include <utility>

namespace bedbow::schema {

namespace {

TableSpec limits() {
  std::vector<KeySpec> keys;
  for (const LimitKind& kind : limit_kinds) {
    const std::string key(kind.key), doc(kind.doc), example(kind.example);
    KeySpec spec = kind.of == Quantity::ratio
                       ? number_key(key, doc).like(example)
                       : quantity_key(key, kind.of == Quantity::angle ? Dim::angle : Dim::length, example, doc);
    if (!std::isnan(kind.usual)) spec = spec.otherwise(kind.usual);
    if (kind.member == &Limits::utilisation) spec = spec.between(0, 1000);
    if (kind.member == &Limits::nose_opening)
      spec =
          spec.otherwise("a warning beyond " + short_number(usual_nose_opening * 100) + " % of the sheet's thickness");
    keys.push_back(spec.positive());
  }
  return {"limits", "[limits]", "Acceptance limits. A limit that is omitted and has no default is not checked.",
          std::move(keys)};
}

TableSpec solve() {
  const SolveSettings usual;
  return {
      "solve",
      "[solve]",
      "Solver settings.",
      {integer_key("dimension", "3, or 2: the x-z plane, for a first look")
           .like("3")
           .between(2, 3)
           .otherwise(usual.dimension),
       length("element_size", "15 mm", "greatest length of an element")
           .positive()
           .otherwise("15 mm; with strips and no plates 30 mm"),
       quantity_key("angles", Dim::angle, "45 deg", "apron positions to solve")
           .between(0, 3.1416)
           .list(1, 1000)
           .otherwise(usual_angles)
           .told(),
       integer_key("modes", "number of natural frequencies").like("6").between(0, 1000).otherwise("none"),
       integer_key("buckling", "number of buckling load factors").like("2").between(0, 1000).otherwise("none"),
       text_key("buckling_step", "step whose loads are multiplied until the machine buckles")
           .like("bend 90 deg")
           .otherwise("the worst step"),
       choice_key("mass", words_of(mass_choices), "lumped: a diagonal mass matrix")
           .otherwise(word_for(mass_choices, usual.lumped_mass)),
       text_key("linear_solver", "linear solver, see `bedbow list`").like("multifrontal").otherwise("chosen by size")}};
}

TableSpec sweep() {
  return {"sweep",
          "[sweep]",
          "Variants of this case.",
          {integer_key("sample", "size of a Latin hypercube sample")
               .like("5000")
               .between(1, 1e9)
               .otherwise("every combination")
               .told(),
           integer_key("seed", "seed of the sample").like("1").between(0, 4294967295.0).otherwise(1.0),
           table_key("vary", ValueKind::tables, "vary", "the varied keys").required()}};
}

TableSpec vary() {
  return {
      "vary",
      "[[sweep.vary]]",
      "One varied quantity: `key` with `values`, or with `from`, `to` and `steps`; or several varied together: `keys` "
      "with `rows`.",
      {text_key("key", "dotted key; an element of an array of tables by its name").like("bed.bar.web.height"),
       any_key("values", "its values").like("60 mm").list(), any_key("from", "first value").like("60 mm"),
       any_key("to", "last value").like("80 mm"),
       integer_key("steps", "number of values from first to last").like("5").between(2, 1e6),
       text_key("keys", "dotted keys varied together").like("post.left.x").list(),
       any_key("rows", "one list of values per row, in the order of keys").like("[\"40 mm\", \"860 mm\"]").list()}};
}

TableSpec stock() {
  std::vector<KeySpec> keys{text_key("name", "name of the bar").like("flat 80 x 16").required()};
  const std::vector<KeySpec> shape = shape_keys();
  keys.insert(keys.end(), shape.begin(), shape.end());
  const std::vector<KeySpec> rest{
      quantity_key(
          "sizes", Dim::length, "80 mm",
          "sizes of the shape, in the order width, height, wall, or diameter, wall; a flat bar may lie or stand")
          .positive()
          .list(1, 4),
      text_key("material", "built-in material or one of the case").like("S275JR").required(),
      number_key("price", "price per metre, in any one currency").like("14.2").not_negative(),
      number_key("price_per_kg", "price per kg instead of per metre").like("1.9").not_negative(),
      quantity_key("bar_length", Dim::length, "6 m", "length it is sold in").positive(),
  };
  keys.insert(keys.end(), rest.begin(), rest.end());
  return {"stock", "[[stock]]", "A bar that can be bought.", std::move(keys), true};
}

TableSpec output() {
  const OutputUnits usual;
  const auto unit = [](std::string key, Dim dim, const OutputUnit& otherwise) {
    KeySpec out = kind_key(std::move(key), ValueKind::unit, "unit of printed values")
                      .like(otherwise.name)
                      .otherwise(otherwise.name);
    out.dim = dim;
    return out;
  };
  return {"output",
          "[output]",
          "Units of printed values. Result files keep their fixed units.",
          {unit("length", Dim::length, usual.length), unit("force", Dim::force, usual.force),
           unit("stress", Dim::stress, usual.stress)}};
}

TableSpec fit() {
  return {"fit",
          "[fit]",
          "Unknowns that are adjusted until the dials read what was measured.",
          {table_key("unknown", ValueKind::tables, "unknown", "one unknown each").required()}};
}

TableSpec unknown() {
  return {"unknown",
          "[[fit.unknown]]",
          "One unknown: a key of the case, or several that share one value.",
          {text_key("key", "dotted key, as in a sweep").like("support.left.stiffness"),
           text_key("keys", "dotted keys that share the value").like("support.left.stiffness").list(),
           any_key("from", "least value").like("1 kN/mm"), any_key("to", "greatest value").like("1000 kN/mm")}};
}

TableSpec plugins() {
  return {"plugins",
          "[plugins]",
          "Shared objects that provide shapes, laws, elements, solvers, findings or writers. Loaded only with "
          "--allow-plugins.",
          {text_key("files", "paths, relative to the case's folder").like("my_law.so").list().required()}};
}

} // namespace

void add_settings(Schema& schema) {
  for (auto* make : {limits, solve, sweep, vary, stock, output, fit, unknown, plugins}) schema.tables.push_back(make());
}

} // namespace bedbow::schema
