#include "io/case/case_builder.h"
#include "io/text/nearest.h"
#include "mesh/machine/stack.h"
#include "mesh/machine/usual_model.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace bedbow {

namespace {

double nu_of(const CaseBuilder& b, int material) {
  const double nu = material >= 0 ? b.machine().materials[static_cast<std::size_t>(material)].nu : 0.3;
  return std::isfinite(nu) ? nu : 0.3;
}

int dimension_of(const CaseBuilder& b) {
  const int usual = SolveSettings{}.dimension;
  const CaseValues* solve = b.root.table("solve");
  return solve ? solve->integer_or("dimension", usual) : usual;
}

void build_bar(const CaseBuilder& b, const CaseValues& in, Body& body, const CaseValues& body_in) {
  Bar bar;
  bar.pos = in.pos();
  bar.name = in.text("name").value_or("");
  bar.material = in.given("material") ? material_of(b, in) : body.material;
  if (!in.given("material") && !body_in.given("material"))
    b.missing(in, "material", "neither the bar nor " + body_in.heading() + " gives one");
  bar.shape = shape_of(b, in, nu_of(b, bar.material));
  const BarModel usual = in.given("element") ? BarModel::beam : usual_model(bar.shape, dimension_of(b));
  bar.model = in.choice_or("model", bar_models, usual);
  if (!in.given("model") && bar.model == BarModel::strip)
    b.assume(in.path("model") + ": strip: it bends across its width");
  bar.element = element_of(b, in, bar.model == BarModel::plate ? 2 : 1);
  bar.start = in.number_or("start", body.start);
  bar.length = in.number_or("length", body.length - (bar.start - body.start));
  if (!in.given("length") && bar.length <= 0) b.wrong(in, "start", "the bar starts beyond the body's right end");
  bar.at = {left_out, left_out};
  if (const auto at = in.numbers("at"); at.size() == 2) bar.at = {at[0], at[1]};
  if (!in.given("at") && !in.given("stack"))
    b.missing(in, "at",
              "the place [y, z] of its centroid, or `stack` on another bar, as in at = [\"8 mm\", \"-52 mm\"]");
  body.bars.push_back(std::move(bar));
}

Crown crown_of(const CaseBuilder& b, const CaseValues& in) {
  Crown crown{in.numbers("x"), in.numbers("height")};
  if (crown.x.size() != crown.height.size())
    b.wrong(in, "height",
            std::to_string(crown.height.size()) + " heights for " + std::to_string(crown.x.size()) +
                " places; give one for each");
  else if (std::ranges::adjacent_find(crown.x, std::ranges::greater_equal()) != crown.x.end())
    b.wrong(in, "x", "the places must increase from left to right");
  else
    return crown;
  return {};
}

void build_body(const CaseBuilder& b, BodyKind kind) {
  const CaseValues* in = b.root.table(to_string(kind));
  Body& body = b.machine().body(kind);
  body.kind = kind;
  if (!in) return;
  body.pos = in->pos();
  body.length = in->number_or_nan("length");
  body.start = in->number_or("start", 0);
  body.material = material_of(b, *in);
  if (const CaseValues* crown = in->table("crown")) body.crown = crown_of(b, *crown);
  for (const CaseValues& bar : in->tables("bar")) build_bar(b, bar, body, *in);
}

/// "on bed.web" as a side and a bar.
void build_stack(const CaseBuilder& b, const CaseValues& in, Bar& bar) {
  const auto text = in.text("stack");
  if (!text) return;
  const std::size_t space = text->find(' ');
  const std::string word = text->substr(0, space);
  for (const Choice<Stack::Side>& side : stack_sides) {
    if (word != side.word || space == std::string::npos) continue;
    const Ref ref = ref_of(b, text->substr(space + 1), in.pos("stack"), in.path("stack"));
    if (ref.kind == Ref::Kind::bar)
      bar.stack = Stack{side.value, ref};
    else if (ref.kind != Ref::Kind::none)
      b.wrong(in, "stack", "a bar can only be stacked on another bar of a body");
    return;
  }
  b.wrong(in, "stack",
          "\"" + *text + "\" is not \"on\", \"under\", \"behind\" or \"before\" and a bar, as in \"on bed.web\"");
}

} // namespace

void build_bodies(const CaseBuilder& b) {
  for (BodyKind kind : all_bodies) build_body(b, kind);
  for (BodyKind kind : all_bodies) {
    const CaseValues* in = b.root.table(to_string(kind));
    if (!in) continue;
    const auto& bars = in->tables("bar");
    for (std::size_t i = 0; i < bars.size(); ++i) build_stack(b, bars[i], b.machine().body(kind).bars[i]);
  }
  b.problems.add(apply_stacks(b.machine(), b.registries.shapes));
}

} // namespace bedbow
