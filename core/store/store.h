// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

/// The public face of the store. Sqlite stays behind it.
namespace wm::store {}
