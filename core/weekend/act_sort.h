// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/weekend/act_graph.h"

namespace wm::weekend {

/// Which acts come after `from`, at any remove; itself among them.
std::vector<bool> descendantsOf(const std::vector<Node>& nodes, std::size_t from);
/// Which acts come before any of `of`, at any remove; those themselves among them.
std::vector<bool> ancestorsOf(const std::vector<Node>& nodes, const std::vector<std::size_t>& of);

/// The acts so that each comes after all that it waits for: by rank, and what has to come earlier just before
/// what waits for it. The same acts always give the same order.
/// Errors: Cycle "edges", with the acts by name, each before the next.
base::Result<std::vector<Node>> sorted(std::vector<Node> nodes, const Teardown& teardown,
                                       std::span<const Job> jobs);

}  // namespace wm::weekend
