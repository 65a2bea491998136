/// \file
/// Work along the tree of fronts in several threads.
#pragma once

#include "solver/linear/fronts.h"

#include <functional>

namespace bedbow::linear {

/// Work on one front. \param thread 0 .. threads - 1.
using FrontWork = std::function<void(int front, int thread)>;

/// All fronts, children before parents. Small subtrees stay in one thread, in postorder; each thread starts in its own
/// share of the tree, so that halves stay separate as long as there is work in them. An exception of one call is
/// rethrown here when the others have ended.
void upwards(const Fronts& fronts, int threads, const FrontWork& work);

/// All fronts, parents before children.
void downwards(const Fronts& fronts, int threads, const FrontWork& work);

/// Number of threads worth starting for a number of multiply-adds. \param asked 0: all cores.
int threads_for(double work, int asked);

} // namespace bedbow::linear
