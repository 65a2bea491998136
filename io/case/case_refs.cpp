#include "io/case/case_builder.h"
#include "io/text/nearest.h"

#include <algorithm>

namespace bedbow {

namespace {

int index_by_name(const auto& list, std::string_view name) {
  const auto it = std::ranges::find_if(list, [&](const auto& item) { return item.name == name; });
  return it == list.end() ? -1 : static_cast<int>(it - list.begin());
}

std::vector<std::string> all_refs(const Machine& m) {
  std::vector<std::string> out;
  for (const Body& body : m.bodies)
    for (const Bar& bar : body.bars) out.push_back(to_string(body.kind) + "." + bar.name);
  for (const Member& member : m.members)
    if (!member.name.empty()) out.push_back(member.name);
  for (const Panel& panel : m.panels)
    if (!panel.name.empty()) out.push_back(panel.name);
  for (std::size_t i = 0; i < m.own.parts.size(); ++i)
    out.push_back(m.plain_name({Ref::Kind::own, BodyKind::bed, static_cast<int>(i)}));
  out.emplace_back("ground");
  return out;
}

std::vector<std::string> bar_names(const Body& body) {
  std::vector<std::string> out;
  for (const Bar& bar : body.bars) out.push_back(bar.name);
  return out;
}

/// "body.bar", or a body that has one bar only.
Ref bar_ref(const Machine& m, std::string_view text) {
  for (const Body& body : m.bodies) {
    const std::string kind = to_string(body.kind);
    if (text == kind && body.bars.size() == 1) return {Ref::Kind::bar, body.kind, 0};
    if (!text.starts_with(kind + ".")) continue;
    const int i = index_by_name(body.bars, text.substr(kind.size() + 1));
    if (i >= 0) return {Ref::Kind::bar, body.kind, i};
  }
  return {};
}

Ref structure_ref(const Machine& m, std::string_view text) {
  const bool member_only = text.starts_with("member."), panel_only = text.starts_with("panel.");
  if (member_only) text.remove_prefix(7);
  if (panel_only) text.remove_prefix(6);
  if (text.empty()) return {};
  if (const int i = index_by_name(m.members, text); i >= 0 && !panel_only) return {Ref::Kind::member, BodyKind::bed, i};
  if (const int i = index_by_name(m.panels, text); i >= 0 && !member_only) return {Ref::Kind::panel, BodyKind::bed, i};
  return {};
}

/// "mesh.gusset"; "mesh" where the mesh is one part.
Ref own_ref(const Machine& m, std::string_view text) {
  const std::vector<std::string>& parts = m.own.parts;
  if (text == "mesh" && parts.size() == 1) return {Ref::Kind::own, BodyKind::bed, 0};
  if (!text.starts_with("mesh.")) return {};
  const auto it = std::ranges::find(parts, text.substr(5));
  return it == parts.end() ? Ref{} : Ref{Ref::Kind::own, BodyKind::bed, static_cast<int>(it - parts.begin())};
}

/// Why a text refers to nothing.
std::string not_there(const Machine& m, const std::string& text) {
  for (const Body& body : m.bodies) {
    const std::string kind = to_string(body.kind);
    if (text != kind && !text.starts_with(kind + ".")) continue;
    if (!body.present()) return "the case has no [" + kind + "] with bars";
    if (text == kind)
      return "the " + kind + " has several bars: " + joined(bar_names(body)) + "; name one of them, as in \"" + kind +
             "." + body.bars.front().name + "\"";
    return "the " + kind + " has no bar \"" + text.substr(kind.size() + 1) + "\"; nearest is \"" +
           nearest(text, all_refs(m)) + "\"";
  }
  if (text == "mesh" && m.own.parts.size() > 1)
    return "the mesh has several parts: " + joined(m.own.parts) + "; name one of them, as in \"mesh." +
           m.own.parts.front() + "\"";
  return "there is no bar, member, panel or part of a mesh \"" + text + "\"; nearest is \"" +
         nearest(text, all_refs(m)) + "\"";
}

} // namespace

Ref ref_of(const CaseBuilder& b, const std::string& text, SourcePos pos, const std::string& path) {
  if (text == "ground") return {Ref::Kind::ground};
  Ref out = bar_ref(b.machine(), text);
  if (out.kind == Ref::Kind::none) out = structure_ref(b.machine(), text);
  if (out.kind == Ref::Kind::none) out = own_ref(b.machine(), text);
  // The mesh's own errors have been reported.
  if (out.kind == Ref::Kind::none && text.starts_with("mesh") && b.machine().own_pos.line > 0 &&
      b.machine().own.parts.empty())
    return out;
  if (out.kind == Ref::Kind::none) b.problems.error(pos, path, not_there(b.machine(), text));
  return out;
}

Ref ref_of(const CaseBuilder& b, const CaseValues& in, std::string_view key) {
  const auto text = in.text(key);
  return text ? ref_of(b, *text, in.pos(key), in.path(key)) : Ref{};
}

int bar_of(const CaseBuilder& b, BodyKind kind, const CaseValues& in, std::string_view key) {
  const auto text = in.text(key);
  if (!text) return -1;
  const Body& body = b.machine().body(kind);
  const std::string prefix = to_string(kind) + ".";
  const std::string name = text->starts_with(prefix) ? text->substr(prefix.size()) : *text;
  const int i = index_by_name(body.bars, name);
  if (i < 0 && body.present())
    b.wrong(in, key,
            "the " + to_string(kind) + " has no bar \"" + name + "\"; nearest is \"" + nearest(name, bar_names(body)) +
                "\"");
  if (!body.present()) b.wrong(in, key, "the case has no [" + to_string(kind) + "] with bars");
  return i;
}

} // namespace bedbow
