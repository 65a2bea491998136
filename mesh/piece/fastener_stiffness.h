/// \file
/// Stiffness of fasteners: a screw or rivet that carries shear between two plates, and a bolt in tension.
/// Equations and sources: docs/theory/fasteners.md.
#pragma once

#include "mesh/piece/fastener.h"

namespace bedbow {

/// Two plates on one fastener. Lengths in m, moduli in Pa.
struct ShearJoint {
  double t1 = 0, E1 = 0; ///< first plate
  double t2 = 0, E2 = 0; ///< second plate; in double shear the middle one is the first
  double d = 0, E3 = 0;  ///< fastener
  int planes = 1;        ///< shear planes, 1 or 2
};

enum class FastenerKind { bolted_metal, riveted_metal, bolted_composite };

/// Flexibility per shear plane [m/N]:
/// C = ((t1 + t2)/2d)^a (b/n) (1/(t1 E1) + 1/(n t2 E2) + 1/(2 t1 E3) + 1/(2 n t2 E3)); bolted metal a = 2/3, b = 3;
/// riveted metal 2/5, 2.2; bolted composite 2/3, 4.2. Source: H. Huth, LBF FB-172 (1984); ASTM STP 927 (1986).
/// All formulas here throw std::invalid_argument naming the size at fault.
double huth_flexibility(const ShearJoint& joint, FastenerKind kind = FastenerKind::bolted_metal);

/// C = 5/(d E3) + 0.8 (1/(t1 E1) + 1/(t2 E2)) [m/N], single shear. Source: Swift, ASTM STP 486 (1971).
double swift_flexibility(const ShearJoint& joint);

/// C = (t1 + t2)^2/(E3 d^3) + 3.7 (1/(t1 E1) + 2/(t2 E2)) [m/N], as quoted by Huth. Sources disagree: others print
/// 1/(t2 E2), or d for d^3 and 3.72.
double grumman_flexibility(const ShearJoint& joint);

/// Bolt in tension.
struct TensionBolt {
  Thread thread;
  double shank = 0;         ///< plain length at nominal diameter within the clamped length [m]
  double free_thread = 0;   ///< thread within the clamped length [m]
  bool socket_head = false; ///< 0.4 d of head share instead of a hexagon's 0.5 d
  bool tapped = false;      ///< screwed into the part: 0.33 d instead of a nut's 0.4 d
  double E = fastener_E;    ///< [Pa]
};

/// Resilience of a nut and the thread engaged in it [m/N]: 0.5 d on the core area and 0.4 d on the nominal one, 0.33 d
/// where the thread is tapped into the part. Source: VDI 2230-1:2015 sec. 5.1.1.
double nut_resilience(const Thread& thread, bool tapped, double E = fastener_E);

/// Resilience [m/N]: head share + shank on nominal area, free thread and 0.5 d on core area, nut share on nominal area.
/// Source: VDI 2230-1:2015 sec. 5.1.1.
double bolt_resilience(const TensionBolt& bolt);

} // namespace bedbow
