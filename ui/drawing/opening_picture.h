// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <cstddef>
#include <optional>
#include <vector>

#include "ui/drawing/glyph.h"
#include "ui/theme/tokens.h"

class QPainter;

namespace wm::ui {

/// One thing that comes off, or, with `open`, what lies open once its parent is off and needs nothing more.
struct OpeningStep {
    struct Job {
        QString name;
        MarkState mark;
    };
    QString label;    ///< not shown where open
    int minutes = 0;  ///< off and on; not shown where open
    int depth = 0;    ///< 0 at the outside; a step hangs on the last one before it that is less deep
    bool open = false;
    std::vector<Job> jobs;
};

struct OpeningJobId {
    std::size_t step;
    std::size_t job;
    friend bool operator==(const OpeningJobId&, const OpeningJobId&) = default;
};

/// Where everything lies, the upper left corner being (0, 0).
struct OpeningLayout {
    struct Row {
        QRectF label;
        QString text;
        QRectF minutes;
        double middle;                      ///< y of the first line
        std::optional<std::size_t> parent;  ///< the step it hangs on
    };
    struct JobPlace {
        OpeningJobId id;
        QRectF area;  ///< glyph and name
        QString text;
    };
    std::vector<Row> rows;  ///< one a step
    std::vector<JobPlace> jobs;
    QSizeF size;
};

OpeningLayout layOutOpening(const std::vector<OpeningStep>& steps, double width, const QFont& font);

/// What comes off, as an outline tree with minutes, and the jobs that hang off each step.
void paintOpening(QPainter& painter, const QPointF& corner, const std::vector<OpeningStep>& steps,
                  const OpeningLayout& layout, const QFont& font, const Tokens& tokens);

}  // namespace wm::ui
