// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json.h"

#include <fmt/format.h>

#include <algorithm>
#include <unordered_set>
#include <utility>

#include "core/exchange/older_text.h"
#include "core/exchange/row_json.h"

namespace wm::exchange {

using base::Fault;
using base::refuse;
using nlohmann::json;
using nlohmann::ordered_json;

namespace {

template <class... Rows>
struct RowTypes {};
using AllRowTypes = picture::ForEachRow<RowTypes>;

// Struck facts stand among the others: the file is whole.
template <class R>
ordered_json tableJson(const picture::Ledger& ledger) {
    std::vector<const R*> rows;
    for (const R& row : ledger.all<R>())
        rows.push_back(&row);
    for (const R& row : ledger.struck<R>())
        rows.push_back(&row);
    std::sort(rows.begin(), rows.end(), [](const R* a, const R* b) {
        if constexpr (requires { a->entered; })
            return std::pair(a->entered, a->id) < std::pair(b->entered, b->id);
        else
            return a->id < b->id;
    });
    auto table = ordered_json::array();
    for (const R* row : rows)
        table.push_back(jsonOf(*row));
    return table;
}

template <class... Rows>
void putTables(ordered_json& root, const picture::Ledger& ledger, RowTypes<Rows...> /*types*/) {
    (root.emplace(std::string(Rows::kTable), tableJson<Rows>(ledger)), ...);
}

// Collects the rows of all tables and sees that no id stands twice.
class RowCollector {
  public:
    explicit RowCollector(const json& root) : root_(root) {}

    template <class R>
    Read take() {
        const auto table = root_.find(R::kTable);
        if (table == root_.end())
            return refuse(Fault::Malformed, std::string(R::kTable), {}, "this key");
        taken_.push_back(R::kTable);
        if (!table->is_array())
            return tl::unexpected(inside(R::kTable, refuseType(*table, "list").error()));
        for (std::size_t i = 0; i < table->size(); ++i)
            if (auto read = takeRow<R>((*table)[i]); !read)
                return tl::unexpected(inside(R::kTable, inside(i, read.error())));
        return {};
    }
    [[nodiscard]] Read refuseOthers() const { return refuseOtherKeys(root_, taken_); }
    std::vector<picture::Row> rows;

  private:
    template <class R>
    Read takeRow(const json& value) {
        R row{};
        if (auto read = readObject<Exactly>(value, row); !read)
            return read;
        if constexpr (std::is_same_v<R, picture::Garage>)
            if (row.id != picture::Garage{}.id)
                return refuse(Fault::Malformed, "id", std::to_string(row.id.value()), "1");
        if (!ids_.insert(row.id.value()).second)
            return refuse(Fault::Duplicate, "id", std::to_string(row.id.value()));
        if constexpr (requires { row.entered; })
            if (row.entered < 0)
                return refuse(Fault::Negative, "entered", std::to_string(row.entered));
        rows.emplace_back(std::move(row));
        return {};
    }

    const json& root_;
    std::vector<std::string_view> taken_{"format"};
    std::unordered_set<std::int64_t> ids_;
};

template <class... Rows>
Read takeTables(RowCollector& collector, RowTypes<Rows...> /*types*/) {
    Read read;
    (void)((read = collector.take<Rows>(), read.has_value()) && ...);
    return read;
}

}  // namespace

std::string toJson(const picture::Ledger& ledger) {
    auto root = ordered_json::object();
    root.emplace("format", newestFormat());
    putTables(root, ledger, AllRowTypes{});
    return root.dump(2, ' ', false, ordered_json::error_handler_t::replace) + '\n';
}

base::Result<std::vector<picture::Row>> fromJson(std::string_view text) {
    auto root = parseJson(text);
    if (!root)
        return tl::unexpected(root.error());
    if (auto read = checkFormat(*root, newestFormat()); !read)
        return tl::unexpected(read.error());
    bringUpToDate(*root);
    RowCollector collector(*root);
    const Read read = takeTables(collector, AllRowTypes{}).and_then([&] { return collector.refuseOthers(); });
    if (!read)
        return tl::unexpected(read.error());
    return std::move(collector.rows);
}

}  // namespace wm::exchange
