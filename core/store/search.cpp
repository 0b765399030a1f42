// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QStringList>

#include "core/store/parts.h"

namespace wm::store {

namespace {

bool hasToken(const QString& word) {
    return std::any_of(word.begin(), word.end(),
                       [](QChar c) { return c.isLetterOrNumber() || c.isSurrogate(); });
}

// Each word as a quoted phrase that may go on: nothing in it can be an operator.
QString quoted(const QString& query) {
    QStringList phrases;
    const QString text = QString(query).replace(QChar(u'\0'), QChar(u' ')).simplified();
    for (QString word : text.split(QChar(u' '), Qt::SkipEmptyParts)) {
        if (!hasToken(word))
            continue;
        word.replace(QChar(u'"'), QStringLiteral("\"\""));
        phrases << QChar(u'"') + word + QStringLiteral("\"*");
    }
    return phrases.join(QChar(u' '));
}

}  // namespace

std::vector<std::int64_t> File::search(const QString& query, int most) const {
    const std::string phrases = quoted(query).toStdString();
    if (phrases.empty() || most <= 0)
        return {};
    const auto found = guarded([&]() -> tl::expected<std::vector<std::int64_t>, ApplyError> {
        std::vector<std::int64_t> ids;
        Statement find(parts_->db.handle(),
                       "SELECT rowid FROM search WHERE search MATCH ? ORDER BY rank LIMIT ?");
        find.bind(1, std::string_view(phrases));
        find.bind(2, std::int64_t{most});
        while (find.step())
            ids.push_back(find.number(0));
        return ids;
    });
    return found.value_or(std::vector<std::int64_t>{});
}

}  // namespace wm::store
