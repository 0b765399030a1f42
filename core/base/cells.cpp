// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/cells.h"

#include <algorithm>
#include <utility>

#include "core/base/text.h"

namespace wm::base {

CellLine CellReader::next() {
    CellLine row{.line = line_};
    fault_.reset();
    for (;;) {
        std::string next = cell();
        row.tooWide = row.cells.size() == kMostCells;
        if (!row.tooWide)
            row.cells.push_back(std::move(next));
        if (atEnd() || text_[at_] != separator_)
            break;
        ++at_;
    }
    endLine();
    row.fault = fault_;
    return row;
}

void CellReader::endLine() {
    if (text_.substr(at_, 2) == "\r\n")
        ++at_;
    if (!atEnd())
        ++at_;
    ++line_;
}

bool CellReader::skipRemark(char sign) {
    if (atEnd() || text_[at_] != sign)
        return false;
    at_ = std::min(text_.find_first_of("\r\n", at_), text_.size());
    endLine();
    return true;
}

void CellReader::note(CellFault fault) {
    if (!fault_)
        fault_ = fault;
}

bool CellReader::endsHere() const {
    return atEnd() || text_[at_] == separator_ || text_[at_] == '\n' || text_[at_] == '\r';
}

std::string CellReader::cell() {
    while (!endsHere() && (text_[at_] == ' ' || text_[at_] == '\t'))
        ++at_;
    const bool isQuoted = !atEnd() && text_[at_] == '"';
    std::string cell = isQuoted ? quoted() : std::string{};
    for (; !endsHere(); ++at_) {
        if (isQuoted && text_[at_] != ' ' && text_[at_] != '\t')
            note(CellFault::TextAfterQuote);
        if (text_[at_] == '"')
            note(CellFault::QuoteWithin);
        cell += text_[at_];
    }
    return std::string(trimmed(cell));
}

// A quote that nothing closes is a letter; else one typing error would swallow the rest of the text.
std::string CellReader::quoted() {
    const std::size_t began = at_;
    const std::size_t line = line_;
    std::string cell;
    for (++at_; !atEnd(); ++at_) {
        if (text_[at_] == '"') {
            if (text_.substr(at_ + 1, 1) != "\"") {
                ++at_;
                return cell;
            }
            ++at_;
        }
        line_ += text_[at_] == '\n' ? 1U : 0U;
        cell += text_[at_];
    }
    leftOpen_ = true;
    note(CellFault::QuoteLeftOpen);
    at_ = began + 1;
    line_ = line;
    return "\"";
}

bool areBlank(const std::vector<std::string>& cells) {
    return std::all_of(cells.begin(), cells.end(), [](const auto& cell) { return cell.empty(); });
}

}  // namespace wm::base
