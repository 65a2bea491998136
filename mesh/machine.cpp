#include "mesh/machine.h"

namespace bedbow {

std::string to_string(BodyKind body) {
  switch (body) {
  case BodyKind::bed:
    return "bed";
  case BodyKind::clamp:
    return "clamp";
  case BodyKind::apron:
    return "apron";
  }
  return "body";
}

const Bar& Machine::bar(const Ref& r) const {
  return body(r.body).bars.at(r.index);
}

std::string Machine::name_of(const Ref& r) const {
  switch (r.kind) {
  case Ref::Kind::none:
    return "nothing";
  case Ref::Kind::ground:
    return "ground";
  case Ref::Kind::bar:
    return to_string(r.body) + "." + bar(r).name;
  case Ref::Kind::member:
    return "member " + members.at(r.index).name;
  case Ref::Kind::panel:
    return "panel " + panels.at(r.index).name;
  }
  return "?";
}

} // namespace bedbow
