#include "io/case/case_builder.h"
#include "mesh/machine/bar_box.h"

#include <cmath>

namespace bedbow {

namespace {

/// The bar that carries edge, face or nose: as given, else the only one, else the nearest to the bend line.
int carrying_bar(const CaseBuilder& b, BodyKind kind, const std::string& table) {
  const CaseValues* body_in = b.root.table(to_string(kind));
  const CaseValues* in = body_in ? body_in->table(table) : nullptr;
  if (in && in->given("bar")) return bar_of(b, kind, *in, "bar");
  const Body& body = b.machine().body(kind);
  if (!body.present()) return -1;
  if (body.bars.size() == 1) return 0;
  const int nearest = bar_nearest_bend_line(body, b.registries.shapes);
  if (nearest >= 0)
    b.assume(to_string(kind) + "." + table + ".bar: " + body.bars[static_cast<std::size_t>(nearest)].name +
             ", the bar nearest to the bend line");
  return nearest;
}

void build_clamp_nose(const CaseBuilder& b) {
  const CaseValues* clamp = b.root.table("clamp");
  if (!clamp) return;
  Nose& nose = b.machine().nose;
  nose.bar = b.machine().body(BodyKind::clamp).edge_bar;
  nose.pos = clamp->pos();
  if (const CaseValues* in = clamp->table("nose")) {
    nose.pos = in->pos();
    nose.setback = in->number_or_nan("setback"); // default: set once the sheet is known
    nose.radius = in->number_or("radius", 0);
    nose.land = in->number_or_nan("land");
  } else if (!clamp->given("nose") && b.root.given("sheet")) {
    b.problems.error(
        clamp->pos(), "clamp.nose",
        "missing table [clamp.nose]: where the clamp bears on the sheet, as in nose = { land = \"15 mm\" }");
  }
}

std::vector<double> finger_widths(const CaseBuilder& b, const CaseValues& in) {
  const bool one = in.given("width") || in.given("count");
  if (in.given("widths") && one) {
    b.wrong(in, in.given("width") ? "width" : "count", "give either `widths`, or `width` and `count`");
  } else if (!in.given("widths") && !one) {
    b.missing(in, "widths", "the widths of the fingers, or `width` and `count`");
  } else if (one && !(in.given("width") && in.given("count"))) {
    b.missing(in, in.given("width") ? "count" : "width", "fingers of one width need both `width` and `count`");
  }
  if (in.given("widths")) return in.numbers("widths");
  return std::vector<double>(static_cast<std::size_t>(in.integer_or("count", 0)), in.number_or_nan("width"));
}

/// x of the left end of each finger.
std::vector<double> finger_starts(const CaseBuilder& b, const CaseValues& in, const std::vector<double>& widths) {
  if (in.given("starts")) {
    for (const char* other : {"start", "gap"})
      if (in.given(other)) b.wrong(in, other, "give either `starts`, or `start` and `gap`");
    const auto starts = in.numbers("starts");
    if (!starts.empty() && starts.size() != widths.size())
      b.wrong(in, "starts",
              "there are " + std::to_string(starts.size()) + " starts for " + std::to_string(widths.size()) +
                  " fingers");
    return starts.size() == widths.size() ? starts : std::vector<double>(widths.size(), left_out);
  }
  std::vector<double> starts;
  double x = in.number_or("start", b.machine().body(BodyKind::clamp).start);
  const double gap = in.number_or("gap", 0);
  for (double width : widths) {
    starts.push_back(x);
    x += width + gap;
  }
  return starts;
}

void build_fingers(const CaseBuilder& b) {
  const CaseValues* clamp = b.root.table("clamp");
  const CaseValues* in = clamp ? clamp->table("fingers") : nullptr;
  if (!in) return;
  Fingers f;
  f.pos = in->pos();
  f.widths = finger_widths(b, *in);
  f.starts = finger_starts(b, *in, f.widths);
  f.reach = in->number_or_nan("reach");
  f.thickness = in->number_or_nan("thickness");
  f.material = material_of(b, *in);
  f.root_stiffness = in->number("root_stiffness");
  const int bar = b.machine().nose.bar;
  if (!in->given("material") && bar >= 0)
    f.material = b.machine().body(BodyKind::clamp).bars[static_cast<std::size_t>(bar)].material;
  b.machine().fingers = std::move(f);
}

} // namespace

void build_nose(const CaseBuilder& b) {
  b.machine().body(BodyKind::bed).edge_bar = carrying_bar(b, BodyKind::bed, "edge");
  b.machine().body(BodyKind::clamp).edge_bar = carrying_bar(b, BodyKind::clamp, "nose");
  b.machine().body(BodyKind::apron).edge_bar = carrying_bar(b, BodyKind::apron, "face");
  build_clamp_nose(b);
  build_fingers(b);
}

} // namespace bedbow
