// Plain structs as the text of a case.
#include "tools/library/bedbow.h"

#include <array>
#include <charconv>
#include <cmath>

namespace bedbow::library {

namespace {

/// In the shortest form that reads back the same.
std::string shortest(double value) {
  std::array<char, 40> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
  return {text.data(), end};
}

std::string toml_string(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    if (static_cast<unsigned char>(c) < ' ' || c == '\x7f') {
      static constexpr std::string_view hex = "0123456789ABCDEF";
      out += std::string("\\u00") + hex[static_cast<unsigned char>(c) >> 4] + hex[c & 15];
    } else {
      out += c;
    }
  }
  return out + '"';
}

/// A table under construction.
class Lines {
public:
  explicit Lines(const std::string& heading) { text_ = heading + "\n"; }
  Lines& text(const char* key, const std::string& value) {
    if (!value.empty()) line(key, toml_string(value));
    return *this;
  }
  Lines& quantity(const char* key, double value, const char* unit) {
    if (!std::isnan(value)) line(key, toml_string(shortest(value) + " " + unit));
    return *this;
  }
  Lines& number(const char* key, double value) {
    if (!std::isnan(value)) line(key, shortest(value));
    return *this;
  }
  Lines& mm(const char* key, double value) { return quantity(key, value, "mm"); }
  Lines& joins(const std::string& one, const std::string& other) {
    line("joins", "[" + toml_string(one) + ", " + toml_string(other) + "]");
    return *this;
  }
  Lines& list(const char* key, const std::vector<std::string>& values) {
    std::string all;
    for (const std::string& v : values) all += (all.empty() ? "" : ", ") + toml_string(v);
    line(key, "[" + all + "]");
    return *this;
  }
  std::string end(const std::string& more) {
    if (!more.empty()) text_ += more + "\n";
    return std::move(text_) + "\n";
  }

private:
  void line(const char* key, const std::string& value) { text_ += std::string(key) + " = " + value + "\n"; }
  std::string text_;
};

std::string in_mm(double value) {
  return shortest(value) + " mm";
}

std::string bar_text(const char* body, const Machine::Bar& bar) {
  Lines t("[[" + std::string(body) + ".bar]]");
  t.text("name", bar.name).text("shape", bar.shape);
  for (const auto& [key, value] : bar.sizes_mm) t.mm(key.c_str(), value);
  if (!std::isnan(bar.y_mm) || !std::isnan(bar.z_mm)) {
    const auto or_zero = [](double v) { return std::isnan(v) ? 0 : v; }; // set by the stack
    t.list("at", {in_mm(or_zero(bar.y_mm)), in_mm(or_zero(bar.z_mm))});
  }
  if (bar.plate) t.text("model", "plate");
  return t.text("material", bar.material).end(bar.more);
}

std::string body_text(const char* name, const char* edge, const Machine::Body& body) {
  if (body.bars.empty()) return "";
  Lines t("[" + std::string(name) + "]");
  t.mm("length", body.length_mm).mm("start", body.start_mm).text("material", body.material);
  std::string out = t.end(body.more);
  if (!body.edge_bar.empty() && *edge != '\0')
    out += Lines("[" + std::string(name) + "." + edge + "]").text("bar", body.edge_bar).end("");
  for (const Machine::Bar& bar : body.bars) out += bar_text(name, bar);
  return out;
}

std::string material_text(const Machine::Material& m) {
  Lines t("[material." + toml_string(m.name) + "]");
  t.quantity("E", m.E_GPa, "GPa").number("nu", m.nu).quantity("density", m.density_kg_m3, "kg/m^3");
  t.quantity("yield", m.yield_MPa, "MPa").quantity("tensile", m.tensile_MPa, "MPa");
  return t.quantity("K", m.K_MPa, "MPa").number("n", m.n).end(m.more);
}

std::string sheet_text(const Machine::Sheet& s) {
  Lines t("[sheet]");
  t.text("material", s.material).mm("thickness", s.thickness_mm).mm("width", s.width_mm).mm("centre", s.centre_mm);
  t.mm("flange", s.flange_mm).mm("inside_radius", s.inside_radius_mm).quantity("angle", s.angle_deg, "deg");
  return t.mm("grip", s.grip_mm).text("moment_law", s.moment_law).end(s.more);
}

std::string nose_text(const Machine& m) {
  if (m.clamp.bars.empty()) return "";
  Lines t("[clamp.nose]");
  t.text("bar", m.clamp.edge_bar)
      .mm("setback", m.nose.setback_mm)
      .mm("land", m.nose.land_mm)
      .mm("radius", m.nose.radius_mm);
  return t.end(m.nose.more);
}

std::string joint_text(const Machine& m) {
  std::string out;
  for (const auto& p : m.posts) {
    Lines t("[[post]]");
    t.text("name", p.name).joins(p.one, p.other).mm("x", p.x_mm).mm("y", p.y_mm);
    t.text("diameter", p.thread).text("class", p.grade).mm("free_length", p.free_length_mm);
    out += t.quantity("preload", p.preload_N, "N").end(p.more);
  }
  for (const auto& c : m.cams) {
    Lines t("[[cam]]");
    t.text("name", c.name).joins(c.one, c.other).mm("x", c.x_mm).mm("y", c.y_mm).mm("lift", c.lift_mm);
    out += t.mm("radius", c.radius_mm).mm("width", c.width_mm).end(c.more);
  }
  for (const auto& h : m.hinges) {
    Lines t("[[hinge]]");
    t.text("name", h.name).joins(h.one, h.other).mm("x", h.x_mm).mm("pin", h.pin_mm);
    out += t.mm("bearing_length", h.bearing_length_mm).end(h.more);
  }
  for (const auto& s : m.screws) {
    Lines t("[[screws]]");
    t.text("name", s.name).joins(s.one, s.other).text("size", s.thread).text("class", s.grade);
    t.mm("first", s.first_mm).mm("pitch", s.pitch_mm).mm("y", s.y_mm);
    out += t.quantity("shear_stiffness", s.shear_stiffness_N_mm, "N/mm").end(s.more);
  }
  for (const auto& w : m.welds) {
    Lines t("[[weld]]");
    out += t.text("name", w.name).joins(w.one, w.other).mm("from", w.from_mm).mm("to", w.to_mm).end(w.more);
  }
  return out;
}

std::string ground_text(const Machine& m) {
  std::string out;
  for (const auto& h : m.handles)
    out +=
        Lines("[[handle]]").text("name", h.name).text("bar", h.bar).mm("x", h.x_mm).mm("reach", h.reach_mm).end(h.more);
  for (const auto& s : m.supports)
    out +=
        Lines("[[support]]").text("name", s.name).text("bar", s.bar).mm("x", s.x_mm).list("holds", s.holds).end(s.more);
  for (const auto& d : m.dials)
    out += Lines("[[dial]]")
               .text("name", d.name)
               .text("on", d.on)
               .list("at", {in_mm(d.x_mm), in_mm(d.y_mm), in_mm(d.z_mm)})
               .end(d.more);
  return out;
}

std::string settings_text(const Machine& m) {
  Lines limits("[limits]"), solve("[solve]");
  limits.mm("bow", m.limits.bow_mm).quantity("angle", m.limits.angle_deg, "deg");
  limits.number("utilisation", m.limits.utilisation);
  solve.mm("element_size", m.element_size_mm);
  if (!m.angles_deg.empty()) {
    std::vector<std::string> angles;
    for (const double a : m.angles_deg) angles.push_back(shortest(a) + " deg");
    solve.list("angles", angles);
  }
  return limits.end("") + solve.end("");
}

} // namespace

std::string Machine::toml() const {
  std::string out;
  if (!title.empty()) out += "title = " + toml_string(title) + "\n\n";
  for (const Material& m : materials) out += material_text(m);
  if (sheet) out += sheet_text(*sheet);
  out += body_text("bed", "edge", bed) + body_text("clamp", "", clamp) + body_text("apron", "face", apron);
  out += nose_text(*this) + joint_text(*this) + ground_text(*this) + settings_text(*this);
  return more.empty() ? out : out + more + "\n";
}

} // namespace bedbow::library
