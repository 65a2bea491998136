/// \file
/// Whether a machine can be built as it is drawn: what is joined touches, what is drilled has metal around it, what
/// turns has room, and sheet, nose, face and bend line meet. Every study asks this before it proposes a machine.
/// Sources and limits: docs/theory/buildable.md.
#pragma once

#include "mesh/machine/machine.h"
#include "mesh/machine/springback.h"
#include "mesh/piece/choice.h"
#include "mesh/piece/quantity.h"
#include "mesh/piece/registry.h"

#include <array>
#include <string>
#include <vector>

namespace bedbow {

/// What is wrong. `value` and `limit` are those of the Fault.
enum class FaultKind {
  gap,             ///< two bars that are screwed or welded together do not touch; value: by how much they miss
  overlap,         ///< two bars occupy the same place; value: how deep
  off_bar,         ///< a joint stands beside the bar that it joins; value: how far
  edge_distance,   ///< a hole lies too near to an edge or an end; value: axis to edge, limit: the least
  pitch,           ///< holes of a row lie too near to each other; value: between axes, limit: the least
  holes_meet,      ///< two holes run into each other; value: between axes, limit: the sum of the radii
  pierces,         ///< a stud or an eccentric passes through a bar that it does not join
  nut_room,        ///< nut or washer stands in something; value: axis to it, limit: radius of the washer
  spanner_room,    ///< no spanner fits on the nut; value: axis to what is in the way, limit: the least
  stud_short,      ///< a stud is shorter than what lies between its nuts; value: its length, limit: the least
  in_sheet,        ///< a post or a hinge pin stands in the sheet
  flange_off_face, ///< the flange bears beyond the apron's face; value: reach of the face, limit: the flange
  face_off_line,   ///< the apron's face does not lie level with the bed; value: its height above it
  edge_off_line,   ///< the bed's front top edge does not lie on the bend line; value: distance
  nose_off_sheet,  ///< the nose stands in the air; value: how far above the sheet
  nose_off_bar,    ///< the land of the nose is not on its bar; value: by how much it misses
  cam_before_post, ///< a cam does not lie behind the post next to it; value: how far behind it lies, limit: the least
  hinge_off_line,  ///< a hinge is off the bend line; value: distance
  setback,         ///< the nose stands in the flange's way; value: its set-back, limit: the least
  swing            ///< apron or flange meets something before the bend is made; value: at which angle, limit: the bend
};

/// The word of each kind, for scripts.
inline constexpr std::array fault_kinds{Choice{"gap", FaultKind::gap},
                                        Choice{"overlap", FaultKind::overlap},
                                        Choice{"off_bar", FaultKind::off_bar},
                                        Choice{"edge_distance", FaultKind::edge_distance},
                                        Choice{"pitch", FaultKind::pitch},
                                        Choice{"holes_meet", FaultKind::holes_meet},
                                        Choice{"pierces", FaultKind::pierces},
                                        Choice{"nut_room", FaultKind::nut_room},
                                        Choice{"spanner_room", FaultKind::spanner_room},
                                        Choice{"stud_short", FaultKind::stud_short},
                                        Choice{"in_sheet", FaultKind::in_sheet},
                                        Choice{"flange_off_face", FaultKind::flange_off_face},
                                        Choice{"face_off_line", FaultKind::face_off_line},
                                        Choice{"edge_off_line", FaultKind::edge_off_line},
                                        Choice{"nose_off_sheet", FaultKind::nose_off_sheet},
                                        Choice{"nose_off_bar", FaultKind::nose_off_bar},
                                        Choice{"cam_before_post", FaultKind::cam_before_post},
                                        Choice{"hinge_off_line", FaultKind::hinge_off_line},
                                        Choice{"setback", FaultKind::setback},
                                        Choice{"swing", FaultKind::swing}};

/// One reason why a machine can't be built, or only with trouble.
struct Fault {
  FaultKind kind = FaultKind::gap;
  bool tight = false; ///< can be made, but not well: a hole near an edge, little room for a spanner
  std::string part;   ///< "post left end", "bed.web", "the flange"
  std::string other;  ///< what it misses, meets or stands in; may be empty
  double value = 0;   ///< SI, see FaultKind
  double limit = 0;   ///< likewise; 0 where there is none
  Quantity of = Quantity::length;
  double x = left_out; ///< along the bend line [m]; NaN where it has no meaning
  SourcePos pos;       ///< of the part
  std::string key;     ///< of the part in the case: "post.left end"
};

/// All reasons, in the order of FaultKind and then of the case. Lengths that the case omits are taken as the mesher
/// takes them; a bar of unknown size, a user mesh, members and panels are not looked at. In the x-z plane there is
/// nothing to see.
/// \param springback of its sheet; 0 where the moment law does not say.
std::vector<Fault> buildable(const Machine& machine, const Registry<ShapeEntry>& shapes, const Springback& springback);

/// Least distance from a post's axis to an end or an edge of its bars: 1.2 times the clearance hole [m]. Source: EN
/// 1993-1-8:2005 Table 3.3.
double least_edge_of_hole(const Post& post);

/// Those of `faults` that a machine as drawn does not have already, or not as badly: a change to a machine answers
/// for what it does, not for what it was given.
std::vector<Fault> new_faults(const std::vector<Fault>& faults, const std::vector<Fault>& drawn);

} // namespace bedbow
