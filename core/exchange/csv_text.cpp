// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/csv_text.h"

#include <algorithm>

#include "core/base/text.h"

namespace wm::exchange {

using base::Fault;
using base::refuse;
using base::Result;

namespace {

class Reader {
  public:
    explicit Reader(std::string_view text) : text_(text) {}

    [[nodiscard]] bool atEnd() const { return at_ >= text_.size(); }
    [[nodiscard]] std::size_t line() const { return line_; }

    bool skipRemark() {
        if (text_[at_] != '#' && text_[at_] != '\n' && text_.substr(at_, 2) != "\r\n")
            return false;
        while (!atEnd() && text_[at_] != '\n')
            ++at_;
        endLine();
        return true;
    }

    Result<CsvRow> row() {
        CsvRow row{.line = line_};
        for (;;) {
            auto cell = text_.substr(at_, 1) == "\"" ? quoted() : plain();
            if (!cell)
                return tl::unexpected(cell.error());
            row.cells.push_back(std::move(*cell));
            if (atEnd() || text_[at_] != ',')
                break;
            ++at_;
        }
        if (text_.substr(at_, 1) == "\r")
            ++at_;
        if (!atEnd() && text_[at_] != '\n')
            return broken("a comma or the end of the line");
        endLine();
        return row;
    }

  private:
    void endLine() {
        if (!atEnd())
            ++at_;
        ++line_;
    }

    [[nodiscard]] tl::unexpected<base::Error> broken(std::string wanted) const {
        return refuse(Fault::Malformed, "line " + std::to_string(line_), {}, std::move(wanted));
    }

    Result<std::string> plain() {
        const std::size_t end = std::min(text_.find_first_of(",\r\n", at_), text_.size());
        std::string cell(base::trimmed(text_.substr(at_, end - at_)));
        at_ = end;
        if (cell.find('"') != std::string::npos)
            return broken("quotes around the whole cell");
        return cell;
    }

    Result<std::string> quoted() {
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
        return broken("a closing quote");
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
};

}  // namespace

Result<CsvTable> readCsv(std::string_view text) {
    if (!base::isUtf8(text))
        return refuse(Fault::NotText, "text");
    CsvTable table;
    Reader reader(text);
    while (!reader.atEnd()) {
        if (reader.skipRemark())
            continue;
        auto row = reader.row();
        if (!row)
            return tl::unexpected(row.error());
        if (table.columns.empty()) {
            table.columns = std::move(row->cells);
            continue;
        }
        if (row->cells.size() != table.columns.size())
            return refuse(Fault::Malformed, "line " + std::to_string(row->line),
                          std::to_string(row->cells.size()) + " cells",
                          std::to_string(table.columns.size()) + " cells");
        table.rows.push_back(std::move(*row));
    }
    if (table.columns.empty())
        return refuse(Fault::Empty, "columns");
    for (auto column = table.columns.begin(); column != table.columns.end(); ++column)
        if (std::find(table.columns.begin(), column, *column) != column)
            return refuse(Fault::Duplicate, "columns", *column);
    return table;
}

}  // namespace wm::exchange
