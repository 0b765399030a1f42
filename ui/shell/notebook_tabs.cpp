// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_tabs.h"

#include <algorithm>
#include <array>

namespace wm::ui {

namespace {

constexpr std::array kFilters{LineFilter::All, LineFilter::Taken, LineFilter::Doubtful, LineFilter::Refused,
                              LineFilter::Known};

QString filterWords(LineFilter filter, int count) {
    switch (filter) {
        case LineFilter::All:
            return NotebookTabs::tr("all %1").arg(count);
        case LineFilter::Taken:
            return NotebookTabs::tr("taken %1").arg(count);
        case LineFilter::Doubtful:
            return NotebookTabs::tr("doubtful %1").arg(count);
        case LineFilter::Refused:
            return NotebookTabs::tr("refused %1").arg(count);
        case LineFilter::Known:
            break;
    }
    return NotebookTabs::tr("taken before %1").arg(count);
}

}  // namespace

NotebookTabs::NotebookTabs(QWidget* parent) : QTabBar(parent) {
    setObjectName(QStringLiteral("notebook-verdicts"));
    setAccessibleName(tr("verdicts"));
    setExpanding(false);
    setDrawBase(false);
    for (std::size_t at = 0; at < kFilters.size(); ++at)
        addTab(QString());
    connect(this, &QTabBar::currentChanged, this,
            [this](int at) { emit filterChosen(kFilters.at(static_cast<std::size_t>(std::max(at, 0)))); });
}

void NotebookTabs::show(const NotebookLines& lines) {
    const QSignalBlocker quiet(this);
    for (std::size_t at = 0; at < kFilters.size(); ++at) {
        const int many = lines.countOf(kFilters.at(at));
        const int tab = static_cast<int>(at);
        setTabText(tab, filterWords(kFilters.at(at), many));
        setTabVisible(tab, kFilters.at(at) != LineFilter::Known || many > 0);
        if (kFilters.at(at) == lines.filter())
            setCurrentIndex(tab);
    }
}

void NotebookTabs::goSideways(int by) {
    int at = currentIndex();
    do
        at += by;
    while (at >= 0 && at < count() && !isTabVisible(at));
    if (at >= 0 && at < count())
        setCurrentIndex(at);
}

void NotebookTabs::turnTo(LineFilter filter) {
    const auto at = std::find(kFilters.begin(), kFilters.end(), filter);
    setCurrentIndex(static_cast<int>(at - kFilters.begin()));
}

}  // namespace wm::ui
