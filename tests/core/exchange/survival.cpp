// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/exchange/survival.h"

#include "core/base/text.h"
#include "core/exchange/json.h"
#include "core/exchange/starter.h"

namespace wm::test {

namespace {

bool isReadable(const base::Error& error) {
    return base::isUtf8(error.field.text()) && base::isUtf8(error.given) && base::isUtf8(error.wanted);
}

}  // namespace

std::string breachOfReading(std::string_view bytes) {
    const auto starter = exchange::readStarter(bytes);
    if (!starter && !isReadable(starter.error()))
        return "the refusal of a starter can't be shown";
    const auto rows = exchange::fromJson(bytes);
    if (!rows)
        return isReadable(rows.error()) ? "" : "the refusal of an exchange text can't be shown";
    const std::string once = exchange::toJson(picture::Ledger(*rows));
    const auto again = exchange::fromJson(once);
    if (!again)
        return "what was written can't be read: " + again.error().field.text();
    return exchange::toJson(picture::Ledger(*again)) == once ? "" : "the second round differs from the first";
}

}  // namespace wm::test
