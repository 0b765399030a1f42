// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>

#include "app/verb.h"
#include "core/book/book.h"
#include "core/store/store.h"

namespace wm::app {

/// An open file with its book, as one headless verb uses it: the same path as the window's.
class Garage {
  public:
    /// The file of the call. A file that is brought to this version or can only be read is reported on
    /// standard error.
    static Answer<Garage> open(const Call& call, store::OpenFor purpose);
    /// The same, and what opening said of the file, refused or not.
    static Answer<Garage> open(const Call& call, store::OpenFor purpose, store::OpenReport& report);
    /// Makes the file of the call, which must not be there.
    static Answer<Garage> create(const Call& call);
    static Answer<Garage> create(const QString& path, calendar::Date clock);

    [[nodiscard]] store::File& file() const { return *file_; }
    /// The day on which the file stands: the one it is pinned to, or the calendar's.
    [[nodiscard]] calendar::Date today() const { return today_; }
    [[nodiscard]] const book::Book& book() const { return *book_; }
    /// Looks at the file as of another day.
    void lookOn(calendar::Date day);
    /// Says a verb; on success the book is the new one. A backup that could not be made is reported on
    /// standard error.
    Answer<picture::Change> apply(const store::Verb& verb);
    /// From here on nothing is taken back that was said before. That it could not be had is no failure of the
    /// verb, and is reported on standard error.
    void endUndo();

  private:
    Garage(std::unique_ptr<store::File> file, calendar::Date clock);

    std::unique_ptr<store::File> file_;
    calendar::Date today_;
    Console* console_ = nullptr;  ///< of the call, if there is one
    std::unique_ptr<book::Book> book_;
};

/// Tells what was written: the words of the change, or in JSON the words and the ids of its rows.
void reportWritten(const Call& call, const picture::Change& change);

/// The exit and words for a verb that was not written.
Failure failureOf(const store::ApplyError& error);

}  // namespace wm::app
