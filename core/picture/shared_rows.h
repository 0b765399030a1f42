// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstdint>
#include <memory>
#include <span>
#include <stdexcept>
#include <utility>
#include <vector>

#include "core/picture/row_index.h"

namespace wm::picture {

/// The rows of one type as they stand in one picture.
template <class R>
class RowsView : public std::span<const R> {
  public:
    using std::span<const R>::span;

    /// Throws std::out_of_range.
    [[nodiscard]] const R& at(std::size_t place) const {
        if (place >= this->size())
            throw std::out_of_range("no such row");
        return (*this)[place];
    }
    friend bool operator==(const RowsView& a, const RowsView& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end());
    }
};

/// Rows that pictures share. A picture that follows another adds its rows behind the last one that the other
/// sees, in the same memory; only where that is full, or another picture has added there already, are they
/// copied. A row never moves or changes while a picture sees it.
template <class R>
class SharedRows {
  public:
    SharedRows() : SharedRows(std::vector<R>{}) {}
    explicit SharedRows(std::vector<R> rows)
        : memory_(std::make_shared<std::vector<R>>(std::move(rows))), count_(memory_->size()) {}

    [[nodiscard]] RowsView<R> view() const { return {memory_->data(), count_}; }

    /// Not while another thread appends to a picture that shares the memory.
    void append(R row) {
        if (memory_->size() != count_ || memory_->size() == memory_->capacity()) {
            std::vector<R> copy;
            copy.reserve(std::max<std::size_t>(16, 2 * count_));
            copy.assign(memory_->begin(), memory_->begin() + static_cast<std::ptrdiff_t>(count_));
            memory_ = std::make_shared<std::vector<R>>(std::move(copy));
        }
        memory_->push_back(std::move(row));
        ++count_;
    }

    /// True if the rows of `earlier` are the first of these, at the same place in memory.
    [[nodiscard]] bool follows(const SharedRows& earlier) const {
        return memory_ == earlier.memory_ && count_ >= earlier.count_;
    }

  private:
    std::shared_ptr<std::vector<R>> memory_;
    std::size_t count_;
};

/// The rows of one type: those that count, those that were struck, and where each of them stands.
template <class R>
class Table {
  public:
    using value_type = R;

    Table() : Table(std::vector<R>{}, std::vector<R>{}) {}
    /// Both in their order.
    Table(std::vector<R> live, std::vector<R> struck)
        : live_(std::move(live)), struck_(std::make_shared<const std::vector<R>>(std::move(struck))) {
        reindex();
    }

    [[nodiscard]] RowsView<R> live() const { return live_.view(); }
    [[nodiscard]] RowsView<R> struck() const { return {struck_->data(), struck_->size()}; }
    /// Struck or not; nullptr if there is no such row.
    [[nodiscard]] const R* find(std::int64_t id) const {
        const RowsView<R> rows = live();
        for (std::size_t at = rows.size(); at > indexed_; --at)
            if (rows[at - 1].id.value() == id)
                return &rows[at - 1];
        const auto place = index_->find(id);
        if (!place)
            return nullptr;
        return *place < indexed_ ? &rows[*place] : &struck()[*place - indexed_];
    }
    /// Puts a row behind the last one.
    void append(R row) {
        live_.append(std::move(row));
        if (live().size() - indexed_ > kMostUnsorted)
            reindex();
    }
    [[nodiscard]] bool follows(const Table& earlier) const {
        return struck_ == earlier.struck_ && live_.follows(earlier.live_);
    }

  private:
    static constexpr std::size_t kMostUnsorted = 64;  // looked through one by one

    void reindex() {
        const RowsView<R> rows = live();
        indexed_ = rows.size();
        std::vector<std::int64_t> ids;
        ids.reserve(rows.size() + struck_->size());
        for (const R& row : rows)
            ids.push_back(row.id.value());
        for (const R& row : *struck_)
            ids.push_back(row.id.value());
        index_ = std::make_shared<const RowIndex>(ids);
    }

    SharedRows<R> live_;
    std::shared_ptr<const std::vector<R>> struck_;
    /// So many live rows stand in the index, the struck ones counted on from there.
    std::size_t indexed_ = 0;
    std::shared_ptr<const RowIndex> index_;
};

}  // namespace wm::picture
